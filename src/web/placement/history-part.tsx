// All that was said and done, newest first, with who and when.
import { isRequirementId } from '../../proving/release/requirement.ts';
import { sayRequirement } from '../../proving/release/words/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { PlacementEvent, PlacementSheet } from './placement-api.ts';

export function HistoryPart({ sheet }: { readonly sheet: PlacementSheet }) {
  const { t, measure } = useSheet();
  const moment = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeStyle: 'short' });
  return (
    <details className="sheet-part">
      <summary>{t('history.title', { n: sheet.events.length })}</summary>
      <ol className="placement-history">
        {sheet.events.toReversed().map((event) => (
          <li key={event.id}>
            <time dateTime={event.at}>{moment.format(new Date(event.at))}</time>
            <span>{event.by}</span>
            <span>
              <Happened event={event} />
            </span>
          </li>
        ))}
        <li>
          <time dateTime={sheet.at}>{moment.format(new Date(sheet.at))}</time>
          <span>{sheet.by}</span>
          <span>{t('history.opened')}</span>
        </li>
      </ol>
    </details>
  );
}

function Happened({ event }: { readonly event: PlacementEvent }) {
  const { t, settings } = useSheet();
  const { requirement, answer, covers, text, reason, place } = event.body as Readonly<Record<string, string | null>>;
  const title = requirement && isRequirementId(requirement) ? sayRequirement(requirement, settings.language).title : '';
  if (event.kind === 'statement') {
    const said = t(answer === 'yes' ? 'statement.yes' : answer === 'no' ? 'statement.no' : 'statement.takenBack');
    const where = place ? t(`lawplace.${place}` as 'lawplace.england') : '';
    return [title, said, where, text].filter(Boolean).join(' · ');
  }
  if (event.kind === 'override')
    return [title, t(covers === 'nothing' ? 'override.tookBack' : 'override.did'), reason].filter(Boolean).join(' · ');
  return [t(`history.${event.kind}`), text].filter(Boolean).join(' · ');
}
