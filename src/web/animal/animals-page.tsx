// All animals of the branch: who is held, who is fed next, what is missing; find one in a second.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { useWasBegun } from '../state/begun.ts';
import { type AnimalLine, listAnimals } from './animal-api.ts';
import { FitnessMark } from './fitness-mark.tsx';
import { NotReached } from './not-reached.tsx';
import { PreyNeeded } from './prey-needed.tsx';
import { useSaying } from './say.ts';
import { TakeInForm, takeInPlace } from './take-in-form.tsx';
import { useAsked } from './use-asked.ts';
import { useSpecies } from './use-species.ts';

export function AnimalsPage() {
  const { t } = useSheet();
  const { value, failed, again } = useAsked('animals', listAnimals);
  const [search, setSearch] = useState('');
  const [takingIn, setTakingIn] = useState(useWasBegun(takeInPlace));
  const { nameOf } = useSpecies();
  if (value === null) return <NotReached failed={failed} again={again} />;
  const wanted = search.trim().toLowerCase();
  const shown = value.animals.filter((one) =>
    `${one.callName} ${one.enclosure} ${nameOf(one.speciesId)}`.toLowerCase().includes(wanted),
  );
  const count = (fitness: string): number => value.animals.filter((one) => one.fitness === fitness).length;
  return (
    <main className="animal-sheet">
      <div className="sheet-head">
        <h1>{t('animals.title')}</h1>
        <p className="lead">{t('animals.lead', { n: value.animals.length, held: count('hold'), vet: count('vet') })}</p>
      </div>
      <div className="animal-tools">
        <TextField className="text-field" value={search} onChange={setSearch}>
          <Label className="field-label">{t('animals.find')}</Label>
          <Input className="text-input" type="search" />
        </TextField>
        <Button className="button" onPress={() => setTakingIn((open) => !open)}>
          {t('animals.takeIn')}
        </Button>
      </div>
      {takingIn && <TakeInForm onDone={(id) => go(`/animals/${id}`)} />}
      {value.animals.length === 0 && <p className="lead">{t('animals.none')}</p>}
      <ul className="animal-list">
        {shown.map((one) => (
          <AnimalRow key={one.id} one={one} species={nameOf(one.speciesId)} />
        ))}
      </ul>
      <PreyNeeded />
    </main>
  );
}

function AnimalRow({ one, species }: { readonly one: AnimalLine; readonly species: string }) {
  const { t, measure } = useSheet();
  const say = useSaying();
  const path = `/animals/${one.id}`;
  return (
    <li>
      <a
        className="animal-row"
        href={path}
        onClick={(event) => {
          event.preventDefault();
          go(path);
        }}
      >
        <span className="animal-place">{one.enclosure}</span>
        <span className="animal-name">
          {one.callName || one.id.slice(0, 8)}
          <i>{species}</i>
        </span>
        <FitnessMark fitness={one.fitness} />
        <span className={one.feed === 'due' || one.feed === 'overdue' ? 'animal-feed animal-due' : 'animal-feed'}>
          {t(`feed.state.${one.feed}`)} {one.feed === 'later' && say.day(one.feedFrom)}
        </span>
        <span className="animal-mass">{one.massG === null ? '–' : measure.text('mass', one.massG)}</span>
        <span className="animal-missing">{one.missing > 0 && t('animals.missing', { n: one.missing })}</span>
      </a>
    </li>
  );
}
