// The verdict on every need: word and shape first, then why, then what to do, then where the number comes from.
import { memo } from 'react';
import type { NeedVerdict } from '../../husbandry/need.ts';
import { OwnMarkNote } from '../controls/own-mark.tsx';
import { SourceNote } from '../controls/source-note.tsx';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { needName } from '../messages/need-name.ts';
import { needWords } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

interface NeedsProps {
  readonly needs: readonly NeedVerdict[];
  readonly facts: FactsBrief | null;
}

const order = ['fails', 'not-known', 'holds'] as const;

/** Fails first, then what is not known, then what holds; within each as the planning room ordered them. */
export function sortedNeeds(needs: readonly NeedVerdict[]): readonly NeedVerdict[] {
  return order.flatMap((verdict) => needs.filter((need) => need.verdict === verdict));
}

export const OpenNeeds = memo(function OpenNeeds({ needs, facts }: NeedsProps) {
  const open = sortedNeeds(needs).filter((need) => need.verdict !== 'holds');
  return (
    <ol className="needs">
      {open.map((need) => (
        <li key={need.id} className={`need need-${need.verdict}`} data-need={need.id} data-verdict={need.verdict}>
          <NeedHead need={need} />
          <NeedBody need={need} facts={facts} />
        </li>
      ))}
    </ol>
  );
});

export const HeldNeeds = memo(function HeldNeeds({ needs, facts }: NeedsProps) {
  const held = needs.filter((need) => need.verdict === 'holds');
  return (
    <ol className="needs needs-held">
      {held.map((need) => (
        <li key={need.id} className="need need-holds" data-need={need.id} data-verdict={need.verdict}>
          <details>
            <summary>
              <NeedHead need={need} />
            </summary>
            <NeedBody need={need} facts={facts} />
          </details>
        </li>
      ))}
    </ol>
  );
});

function NeedHead({ need }: { readonly need: NeedVerdict }) {
  const { settings } = useSheet();
  const name = needName(need, settings.language);
  return (
    <span className="need-head">
      <VerdictMark verdict={need.verdict} />
      <span className="need-title" lang={name.lang}>
        {name.text}
      </span>
    </span>
  );
}

function NeedBody({ need, facts }: { readonly need: NeedVerdict; readonly facts: FactsBrief | null }) {
  const { t, measure } = useSheet();
  const said = needWords(need, measure);
  return (
    <div className="need-body">
      <p className="need-figures">
        <span>
          <b>{t('need.found')}</b> <span lang={said.found.lang}>{said.found.text}</span>
        </span>
        <span>
          <b>{t('need.wanted')}</b> <span lang={said.wanted.lang}>{said.wanted.text}</span>
        </span>
      </p>
      <div>
        {said.reasons.map((reason) => (
          <p key={reason.text} className="need-reason" lang={reason.lang}>
            {reason.text}
          </p>
        ))}
        {said.fixes.length > 0 && (
          <ul className="need-fixes" aria-label={t('need.fixes')}>
            {said.fixes.map((fix) => (
              <li key={fix.text} lang={fix.lang}>
                {fix.text}
              </li>
            ))}
          </ul>
        )}
      </div>
      {said.settledBy && (
        <p className="need-settled">
          <b>{t('need.settledBy')}</b> <span lang={said.settledBy.lang}>{said.settledBy.text}</span>
        </p>
      )}
      <p className="need-source">
        {need.own && <OwnMarkNote own={need.own} />}
        <SourceNote facts={facts} source={need.source} read={need.read} />
      </p>
    </div>
  );
}
