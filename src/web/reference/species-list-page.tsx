// All species that the program knows, with the length of a grown one and whether it is one for a beginner.
import { NotReached } from '../animal/not-reached.tsx';
import { factText } from '../controls/parts-text.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { readAllReference, standingAt } from './reference-api.ts';
import { SheetLink } from './sheet-link.tsx';
import { useReference } from './use-reference.ts';

export function SpeciesListPage() {
  const { t, measure } = useSheet();
  const { value: all, failed, again } = useReference('reference', readAllReference);
  if (!all) return <NotReached failed={failed} again={again} />;
  const sorted = [...all.species].sort((a, b) => a.commonName.localeCompare(b.commonName, measure.locale));
  return (
    <main className="ref-sheet">
      <div className="sheet-head">
        <h1>{t('ref.title')}</h1>
        <p className="lead">{t('ref.lead')}</p>
      </div>
      <div className="ref-tools">
        <SheetLink path="/lists" className="button">
          {t('lists.link')}
        </SheetLink>
      </div>
      <ul className="ref-list">
        {sorted.map(({ id, commonName, scientificName, adult, all: always }) => {
          const length = standingAt(all, `species.${id}.adult.totalLengthCm`)?.value ?? adult.totalLengthCm ?? {};
          const beginner = standingAt(all, `species.${id}.all.beginner`)?.value ?? always.beginner ?? {};
          return (
            <li key={id}>
              <SheetLink path={`/species/${id}`}>
                <span className="ref-name">
                  {commonName} <i lang="la">{scientificName}</i>
                </span>
                <span>{t('ref.adult', { length: factText('totalLengthCm', length, measure, t) })}</span>
                <span>
                  {t('fact.beginner')}: {factText('beginner', beginner, measure, t)}
                </span>
              </SheetLink>
            </li>
          );
        })}
      </ul>
    </main>
  );
}
