// One animal on one sheet: the drawing of its mass and length left; verdict, next steps, register and history right.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { PlacementLink } from '../placement/placement-link.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { type AnimalSheet, readAnimal } from './animal-api.ts';
import { EntryForm } from './entry-form.tsx';
import { FitnessMark } from './fitness-mark.tsx';
import { GrowthDrawing } from './growth-drawing.tsx';
import { HistoryList } from './history-list.tsx';
import { MassDrawing } from './mass-drawing.tsx';
import { NextMeal } from './next-meal.tsx';
import { NotReached } from './not-reached.tsx';
import { PhotoStrip } from './photo-strip.tsx';
import { RegisterPart } from './register-part.tsx';
import { useSaying } from './say.ts';
import { TraceLength } from './trace-length.tsx';
import { useAsked } from './use-asked.ts';
import { useSpecies } from './use-species.ts';

export function AnimalPage({ id }: { readonly id: string }) {
  const { value, failed, again } = useAsked(`animal-${id}`, () => readAnimal(id));
  if (value === null) return <NotReached failed={failed} again={again} />;
  return <Sheet sheet={value} again={again} />;
}

function Sheet({ sheet, again }: { readonly sheet: AnimalSheet; readonly again: () => void }) {
  const { t } = useSheet();
  const { nameOf } = useSpecies();
  const [boxCm, setBoxCm] = useState(120);
  const name = sheet.entry.callName || sheet.id.slice(0, 8);
  return (
    <main className="board board-headed">
      <div className="sheet-head board-head">
        <Button className="quiet-button" onPress={() => go('/animals')}>
          {t('sheet.back')}
        </Button>
        <h1>{name}</h1>
        <p className="lead">
          {nameOf(sheet.speciesId)} · {t('animals.enclosure')} {sheet.enclosure}
        </p>
      </div>
      <div className="board-drawing">
        <GrowthDrawing sheet={sheet} boxCm={boxCm} onBox={setBoxCm} />
        <MassDrawing sheet={sheet} />
      </div>
      <div className="board-sheet">
        <FitnessPart sheet={sheet} />
        {!sheet.gone && (
          <div className="sheet-next">
            <Button className="button" onPress={() => go(`/animals/${sheet.id}/look-over`)}>
              {t(sheet.examination.drafted ? 'sheet.lookOverGoOn' : 'sheet.lookOver')}
            </Button>
            <PlacementLink of="animal" id={sheet.id} />
          </div>
        )}
        <NextMeal sheet={sheet} />
        <EntryForm sheet={sheet} onWritten={again} />
        <TraceLength animalId={sheet.id} onWritten={again} />
        <PhotoStrip sheet={sheet} onKept={again} />
        <RegisterPart sheet={sheet} onChanged={again} />
        <HistoryList sheet={sheet} onChanged={again} />
        <p className="field-hint">{t('sheet.vetOnly')}</p>
      </div>
    </main>
  );
}

function FitnessPart({ sheet }: { readonly sheet: AnimalSheet }) {
  const { t } = useSheet();
  const say = useSaying();
  const { answer, findings } = sheet.fitness;
  return (
    <section className="sheet-part" aria-labelledby="fitness-title">
      <h2 id="fitness-title">{t(`fit.title.${answer}`)}</h2>
      <FitnessMark fitness={answer} large />
      <ul className="finding-list">
        {findings.map((finding) => (
          <li key={finding.id} className={`finding finding-${finding.answer}`}>
            <span className="finding-name">{t(`fitfinding.${finding.id}`)}</span>
            <span className="finding-word">{t(`fitfinding.${finding.answer}`)}</span>
            <span className="finding-why">{finding.reasons.map(say.reason).join(' ')}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
