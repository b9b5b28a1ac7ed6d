// For the inspector: type a word, see the animal with every heading, what is missing and every correction; print it.
import { useDeferredValue, useState } from 'react';
import { Button, Input, Label, Text, TextField } from 'react-aria-components';
import { choiceWords, fieldWords } from '../../animal/words/register.ts';
import { isMessageKey } from '../messages/translate.ts';
import { paperQuery } from '../settings/paper-query.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { type InspectionAnswer, readInspection } from './animal-api.ts';
import { NotReached } from './not-reached.tsx';
import { useSaying } from './say.ts';
import { useAsked } from './use-asked.ts';
import { useSpecies } from './use-species.ts';

export function RegisterPage() {
  const { t, settings } = useSheet();
  const [search, setSearch] = useState('');
  const wanted = useDeferredValue(search);
  const { value, failed, again } = useAsked(`register-${wanted}`, () => readInspection(wanted));
  const query = paperQuery(settings, { search: wanted });
  return (
    <main className="animal-sheet">
      <div className="sheet-head">
        <h1>{t('register.title')}</h1>
        {value && (
          <p className="lead">
            {t('register.lead', {
              n: value.animals.length,
              years: value.years,
              place: isMessageKey(`lawplace.${value.place}`)
                ? t(`lawplace.${value.place}` as 'lawplace.eu')
                : value.place,
            })}
          </p>
        )}
      </div>
      <div className="animal-tools no-paper">
        <TextField className="text-field" value={search} onChange={setSearch}>
          <Label className="field-label">{t('register.find')}</Label>
          <Input className="text-input" type="search" />
          <Text slot="description" className="field-hint">
            {t('help.register.find')}
          </Text>
        </TextField>
        <a className="button button-quiet" href={`/api/inspection.pdf?${query}`} target="_blank" rel="noreferrer">
          {t('register.pdf')}
        </a>
        <a className="button button-quiet" href={`/api/inspection.csv?${query}`}>
          {t('register.csv')}
        </a>
      </div>
      {value === null ? <NotReached failed={failed} again={again} within /> : <RegisterList answer={value} />}
    </main>
  );
}

function RegisterList({ answer }: { readonly answer: InspectionAnswer }) {
  return (
    <div>
      {answer.animals.map((animal) => (
        <RegisterAnimal key={animal.id} animal={animal} open={answer.animals.length === 1} />
      ))}
    </div>
  );
}

function RegisterAnimal({
  animal,
  open,
}: {
  readonly animal: InspectionAnswer['animals'][number];
  readonly open: boolean;
}) {
  const { t } = useSheet();
  const say = useSaying();
  const { nameOf } = useSpecies();
  const missing = animal.headings
    .filter((finding) => finding.state === 'missing')
    .map((finding) => say.spoken(finding.heading.say));
  const shown = (field: string | undefined, value: string): string => {
    if (field === 'speciesId') return nameOf(value);
    return choiceWords[value] ? say.spoken(choiceWords[value]) : value.split(', ').map(say.day).join(', ');
  };
  const whatSaid = (what: string): string => {
    if (what in fieldWords) return say.spoken(fieldWords[what as keyof typeof fieldWords]);
    return isMessageKey(`entry.${what}`) ? t(`entry.${what}` as 'entry.weighing') : what;
  };
  const corrected = (what: string, value: unknown): string =>
    typeof value === 'string' ? shown(what, value) : value === null ? t('register.withdrawn') : say.entry(value);
  return (
    <details className="register-animal" open={open}>
      <summary>
        <span className="animal-name">
          {animal.entry.callName || animal.id.slice(0, 8)}
          <i>{nameOf(animal.speciesId)}</i>
        </span>
        <span>{animal.gone ? t('fit.gone') : animal.enclosure}</span>
        <span className={missing.length > 0 ? 'register-missing' : ''}>
          {missing.length > 0 ? `${t('register.missing')}: ${missing.join('; ')}` : t('register.whole')}
        </span>
      </summary>
      <table className="plain-table">
        <tbody>
          {animal.headings.map((finding) => (
            <tr key={finding.heading.id}>
              <th scope="row">
                {say.spoken(finding.heading.say)}
                {finding.heading.paragraph && <sup>{finding.heading.paragraph}</sup>}
              </th>
              <td>
                {finding.state === 'there'
                  ? shown(finding.heading.field, finding.value)
                  : finding.state === 'missing'
                    ? t('register.missingMark')
                    : t(`register.${finding.state}`)}
              </td>
              <td>{t(finding.law ? 'register.law' : 'register.ours')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {animal.corrections.length > 0 && (
        <>
          <h3>{t('register.corrections')}</h3>
          <ul className="history-list">
            {animal.corrections.map((one) => (
              <li key={`${one.at}-${one.what}`}>
                {t('register.correction', {
                  on: say.day(one.at.slice(0, 10)),
                  by: one.by,
                  what: whatSaid(one.what),
                  was: corrected(one.what, one.was),
                  now: corrected(one.what, one.now),
                  reason: one.reason,
                })}
              </li>
            ))}
          </ul>
        </>
      )}
      <Button className="quiet-button" onPress={() => go(`/animals/${animal.id}`)}>
        {t('register.open')}
      </Button>
    </details>
  );
}
