// Which sheet about animals the address names: list, one animal, look-over, round, register, call.
import './animal.css';
import { RoundPage } from '../round/round-page.tsx';
import { AnimalPage } from './animal-page.tsx';
import { AnimalsPage } from './animals-page.tsx';
import { CallPage } from './call-page.tsx';
import { ExaminationPage } from './examination-page.tsx';
import { RegisterPage } from './register-page.tsx';

export function AnimalPages({ path }: { readonly path: string }) {
  const animal = /^\/animals\/([0-9a-f-]{36})(\/look-over)?\/?$/.exec(path);
  if (animal?.[1])
    return animal[2] ? (
      <ExaminationPage key={animal[1]} id={animal[1]} />
    ) : (
      <AnimalPage key={animal[1]} id={animal[1]} />
    );
  if (path.startsWith('/round')) return <RoundPage />;
  if (path.startsWith('/register')) return <RegisterPage />;
  if (path.startsWith('/call')) return <CallPage />;
  return <AnimalsPage />;
}
