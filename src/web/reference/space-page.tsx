// How much floor does each standard ask for this animal, and which of them does this box meet?
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Species } from '../../husbandry/fact.ts';
import { rangeOf } from '../../husbandry/species-facts.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { compareSpace } from './compare-space.ts';
import { type Reference, readReference } from './reference-api.ts';
import { SheetLink } from './sheet-link.tsx';
import { SpaceLines } from './space-lines.tsx';
import { SpaceTable } from './space-table.tsx';
import { useSpaceWords } from './space-words.ts';
import { StandardPolicy } from './standard-policy.tsx';
import { useReference } from './use-reference.ts';

export function SpacePage({ id }: { readonly id: string }) {
  const { value: all, failed, again } = useReference(`reference-${id}`, () => readReference(id));
  const species = all?.species[0];
  if (!all || !species) return <NotReached failed={failed} again={again} />;
  return <Comparison all={all} species={species} onChanged={again} />;
}

interface ComparisonProps {
  readonly all: Reference;
  readonly species: Species;
  readonly onChanged: () => void;
}

function Comparison({ all, species, onChanged }: ComparisonProps) {
  const { t, measure } = useSheet();
  const words = useSpaceWords();
  const adultM = (rangeOf(species, 'adult', 'totalLengthCm')?.high ?? 120) / 100;
  const [lengthM, setLength] = useState(adultM);
  const [box, setBox] = useState({ lengthM: 1.2, depthM: 0.6, heightM: 0.6 });
  const lines = compareSpace(all.standards, species, lengthM, box);
  // A length or a sum alone says nothing of the floor, so it has no part in the spread.
  const areas = lines.filter(({ asked, floor }) => !floor.free || asked.floorM2 !== null).map(({ areaM2 }) => areaM2);
  const met = lines.filter(({ short }) => short.length === 0).length;
  const finding = t('space.finding', {
    length: measure.text('length', lengthM),
    least: words.area(areas[0] ?? 0),
    most: words.area(areas.at(-1) ?? 0),
    n: met,
    of: lines.length,
  });
  const side = (part: keyof typeof box, label: string) => (
    <QuantityField
      label={label}
      kind="length"
      digits={0}
      value={box[part]}
      onChange={(next) => next !== null && setBox({ ...box, [part]: next })}
      min={0.1}
      max={6}
    />
  );
  return (
    <main className="ref-sheet">
      <div className="sheet-head">
        <h1>{t('space.title', { name: species.commonName })}</h1>
        <p className="lead" aria-live="polite">
          {lines.length === 0 ? t('space.none') : finding}
        </p>
      </div>
      <div className="space-tools">
        <fieldset>
          <legend>{t('space.animal')}</legend>
          <QuantityField
            label={t('space.length')}
            kind="length"
            digits={0}
            value={lengthM}
            onChange={(next) => next !== null && setLength(next)}
            min={0.08}
            max={6}
          />
        </fieldset>
        <fieldset>
          <legend>{t('space.box')}</legend>
          <div className="field-row">
            {side('lengthM', t('space.boxLength'))}
            {side('depthM', t('space.boxDepth'))}
            {side('heightM', t('space.boxHeight'))}
          </div>
        </fieldset>
      </div>
      <p className="ref-caption">{t('space.picture')}</p>
      <SpaceLines lines={lines} box={box} all={all} />
      {lines.length > 0 && <SpaceTable lines={lines} all={all} />}
      <StandardPolicy all={all} onChanged={onChanged} />
      <div className="ref-tools">
        <SheetLink path={`/species/${species.id}`} className="button button-quiet">
          {t('ref.toSpecies')}
        </SheetLink>
        <Button className="button button-quiet" onPress={() => print()}>
          {t('ref.print')}
        </Button>
      </div>
    </main>
  );
}
