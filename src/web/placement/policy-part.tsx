// Which requirements this shop holds absolute, and which it leaves to its managers; each with who set it, when and why.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { RequirementId } from '../../proving/release/requirement.ts';
import { sayRequirement } from '../../proving/release/words/say.ts';
import type { Asked } from '../animal/animal-api.ts';
import { useSaying } from '../animal/say.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { Faults } from '../proof/faults.tsx';
import { setShopValue } from '../reference/reference-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import type { PolicyLine } from './placement-api.ts';

const policyPlace = 'release-policy';

interface PolicyProps {
  readonly lines: readonly PolicyLine[];
  readonly onChange: () => void;
}

export function PolicyPart({ lines, onChange }: PolicyProps) {
  const { t, settings } = useSheet();
  const say = useSaying();
  return (
    <details className="sheet-part policy" open={useWasBegun(policyPlace)}>
      <summary>{t('policy.title')}</summary>
      <p className="field-hint">{t('policy.say')}</p>
      <ul>
        {lines.map((line) => (
          <li key={line.id} className="policy-line">
            <span>{sayRequirement(line.id, settings.language).title}</span>
            <b>{t(`policy.${line.absolute}`)}</b>
            <span>
              {line.set &&
                t('policy.set', { by: line.set.by, on: say.day(line.set.at.slice(0, 10)), why: line.set.why })}
            </span>
          </li>
        ))}
      </ul>
      <PolicyForm lines={lines.filter((line) => line.absolute !== 'always')} onChange={onChange} />
    </details>
  );
}

function PolicyForm({ lines, onChange }: PolicyProps) {
  const { t, settings } = useSheet();
  const { now, change, forget } = useBegun(policyPlace, {
    id: lines[0]?.id ?? ('home-proven' as RequirementId),
    why: '',
  });
  const { id, why } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const other = lines.find((line) => line.id === id)?.absolute === 'absolute' ? 'manager' : 'absolute';
  const keep = async () => {
    const kept = await setShopValue(`policy.release.${id}`, { value: other }, why);
    setAnswer(kept);
    if (!kept.ok) return;
    forget();
    onChange();
  };
  return (
    <form
      className="placement-new"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <div>
        <label className="field-label">
          {t('policy.which')}
          <select
            className="text-input"
            value={id}
            aria-describedby="policy-which-help"
            onChange={(event) => change({ id: event.target.value as RequirementId })}
          >
            {lines.map((line) => (
              <option key={line.id} value={line.id}>
                {sayRequirement(line.id, settings.language).title}
              </option>
            ))}
          </select>
        </label>
        <HelpLine id="policy-which-help" text={t('help.own.policy')} />
      </div>
      <div>
        <label className="field-label">
          {t('policy.why')}
          <input
            type="text"
            className="text-input"
            value={why}
            aria-describedby="policy-why-help"
            onChange={(event) => change({ why: event.target.value })}
          />
        </label>
        <HelpLine id="policy-why-help" text={t('help.own.policyWhy')} />
      </div>
      <Button className="button" type="submit" isDisabled={why.trim() === ''}>
        {t(other === 'absolute' ? 'policy.makeAbsolute' : 'policy.leaveToManager')}
      </Button>
      <Faults answer={answer} />
    </form>
  );
}
