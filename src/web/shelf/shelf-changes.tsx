// Every change of the shelf with who, when and why; any earlier shelf can stand again.
import { Button } from 'react-aria-components';
import { dateText } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import type { ShownShelf } from './shelf-api.ts';

interface ShelfChangesProps {
  readonly shown: ShownShelf;
  readonly onBack: (version: number) => void;
}

export function ShelfChanges({ shown, onBack }: ShelfChangesProps) {
  const { t, measure } = useSheet();
  return (
    <section className="sheet-part" aria-labelledby="shelf-changes-title">
      <h2 id="shelf-changes-title">{t('shelf.changes')}</h2>
      <ol className="shelf-changes">
        {shown.changes.map((change) => (
          <li key={change.version}>
            <span>
              {t(`shelf.step.${change.step}`, { to: change.backTo ?? 0 })}
              {change.why !== '' && `: ${change.why}`}
              <span className="shelf-who">{` ${change.by}, ${dateText(change.at.slice(0, 10), measure.locale)}`}</span>
            </span>
            {change.version === shown.version ? (
              <span className="shelf-now">{t('shelf.stands')}</span>
            ) : (
              <Button className="button button-quiet" onPress={() => onBack(change.version)}>
                {t('shelf.putBack', { version: change.version })}
              </Button>
            )}
          </li>
        ))}
        <li>
          <span>{t('shelf.starter')}</span>
          {shown.version === 0 ? (
            <span className="shelf-now">{t('shelf.stands')}</span>
          ) : (
            <Button className="button button-quiet" onPress={() => onBack(0)}>
              {t('shelf.putBack', { version: 0 })}
            </Button>
          )}
        </li>
      </ol>
    </section>
  );
}
