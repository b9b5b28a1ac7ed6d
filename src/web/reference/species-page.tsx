// One species as it can be shown to a customer: heat, humidity, size, ways, trade; every value with its source.
import { Button } from 'react-aria-components';
import type { Species } from '../../husbandry/fact.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { factText } from '../controls/parts-text.ts';
import { dateText } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';
import { FactRow, useFactName } from './fact-row.tsx';
import { HeatLine, heatKeys } from './heat-line.tsx';
import { type Reference, readReference } from './reference-api.ts';
import { SheetLink } from './sheet-link.tsx';
import { SizeDrawing } from './size-drawing.tsx';
import { useReference } from './use-reference.ts';

const groups = {
  'ref.moisture': ['rhPct', 'rhSloughPct'],
  'ref.habits': [
    'activity',
    'habit',
    'climbs',
    'burrows',
    'substrates',
    'substrateDepthMm',
    'climateKind',
    'fergusonZone',
    'uvIndex',
  ],
  'ref.keeping': ['beginner', 'company', 'starterTub', 'longevityMaxYears', 'euAnnex', 'citesAppendix'],
  'ref.stages': ['totalLengthCm', 'headWidthMm', 'massG', 'preySharePct', 'feedIntervalDays'],
} as const;
const stages = ['all', 'hatchling', 'young', 'adult'] as const;

export function SpeciesPage({ id }: { readonly id: string }) {
  const { t } = useSheet();
  const { value: all, failed, again } = useReference(`reference-${id}`, () => readReference(id));
  const { prose } = useReader();
  const species = all?.species[0];
  if (!all || !species) return <NotReached failed={failed} again={again} />;
  return (
    <main className="ref-sheet">
      <div className="sheet-head">
        <h1>{species.commonName}</h1>
        <p className="lead">
          <i lang="la">{species.scientificName}</i>, <span lang="la">{species.family}</span> · {all.shopName},{' '}
          {all.branchName}
        </p>
      </div>
      <div className="ref-tools">
        <SheetLink path={`/space/${id}`} className="button">
          {t('ref.toSpace')}
        </SheetLink>
        <Button className="button button-quiet" onPress={() => print()}>
          {t('ref.print')}
        </Button>
      </div>
      <HeatLine all={all} species={species} />
      <Rows all={all} species={species} keys={heatKeys} onChanged={again} />
      <h2>{t('ref.moisture')}</h2>
      <Rows all={all} species={species} keys={groups['ref.moisture']} onChanged={again} />
      <SizeDrawing all={all} species={species} />
      {(['ref.habits', 'ref.keeping', 'ref.stages'] as const).map((group) => (
        <section key={group}>
          <h2>{t(group)}</h2>
          <Rows all={all} species={species} keys={groups[group]} onChanged={again} />
        </section>
      ))}
      {species.notes.length > 0 && (
        <section>
          <h2>{t('ref.notes')}</h2>
          <ul className="ref-notes">
            {species.notes.map((note) => (
              <li key={note}>{prose(note)}</li>
            ))}
          </ul>
        </section>
      )}
      <Earlier all={all} />
    </main>
  );
}

interface RowsProps {
  readonly all: Reference;
  readonly species: Species;
  readonly keys: readonly string[];
  readonly onChanged: () => void;
}

function Rows({ all, species, keys, onChanged }: RowsProps) {
  const { t } = useSheet();
  return keys.flatMap((key) =>
    stages.flatMap((stage) => {
      const fact = species[stage][key];
      if (!fact) return [];
      const path = `species.${species.id}.${stage}.${key}`;
      const said = stage === 'all' ? {} : { stage: t(`ref.stage.${stage}`) };
      return [<FactRow key={path} all={all} path={path} fact={fact} {...said} onChanged={onChanged} />];
    }),
  );
}

function Earlier({ all }: { readonly all: Reference }) {
  const { t, measure } = useSheet();
  const nameOf = useFactName();
  const gone = all.overlays.filter(({ withdrawn, path }) => withdrawn !== null && path.startsWith('species.'));
  if (gone.length === 0) return null;
  const on = (at: string | undefined): string => dateText((at ?? '').slice(0, 10), measure.locale);
  return (
    <details className="ref-earlier">
      <summary>{t('ref.history')}</summary>
      <ul className="ref-notes">
        {gone.map(({ id, path, value, by, at, why, withdrawn }) => {
          const key = path.split('.').at(-1) ?? '';
          const blanks = { what: nameOf(key), value: factText(key, value, measure, t), by, date: on(at), why };
          const goneBlanks = {
            goneBy: withdrawn?.by ?? '',
            goneDate: on(withdrawn?.at),
            goneWhy: withdrawn?.why ?? '',
          };
          return <li key={id}>{t('ref.historyLine', { ...blanks, ...goneBlanks })}</li>;
        })}
      </ul>
    </details>
  );
}
