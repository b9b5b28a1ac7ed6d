// The people who work here: add one, change role and branch, stop and allow sign-in, give a code, take a change back.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import type { Translate } from '../messages/translate.ts';
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type People, readPeople, type Standing, undoChange } from './account-api.ts';
import { AddBranch, AddPerson } from './add-forms.tsx';
import { faultsByField } from './fault-words.ts';
import { useMe } from './here.ts';
import { PersonRow } from './person-row.tsx';

export interface GivenCode {
  readonly name: string;
  readonly code: string;
}

export function PeoplePage() {
  const { t } = useSheet();
  const me = useMe();
  const { value, failed, again } = useAsked('people', readPeople);
  const [given, setGiven] = useState<GivenCode | null>(null);
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  if (value === null || me === null) return <NotReached failed={failed} again={again} />;
  const onDone = (next: Asked<unknown>) => {
    setAnswer(next);
    again();
  };
  const fault = faultsByField(answer, [], t)[''];
  return (
    <main className="account-sheet">
      <h1>{t('acc.people')}</h1>
      <p className="lead">{t('acc.peopleLead')}</p>
      <p className="field-fault" role="alert">
        {fault}
      </p>
      {given !== null && (
        <div className="account-code" role="status">
          {t('acc.codeFor', { name: given.name })}
          <strong translate="no">{given.code}</strong>
          {t('acc.codeSay')}
        </div>
      )}
      <ul className="account-list account-people">
        {value.people.map((person) => (
          <PersonRow key={person.id} person={person} branches={value.branches} onDone={onDone} onCode={setGiven} />
        ))}
      </ul>
      <AddPerson branches={value.branches} onAdded={again} onCode={setGiven} />
      {me.role === 'owner' && <AddBranch places={value.places} onAdded={again} />}
      <Changes people={value} onUndo={async (id) => onDone(await undoChange(id))} />
    </main>
  );
}

const undoable: readonly string[] = ['added', 'changed', 'undone', 'code'];

/** A change can be undone while nothing of its kind has followed on the same person. */
function Changes({ people, onUndo }: { readonly people: People; readonly onUndo: (id: string) => Promise<void> }) {
  const { t, measure } = useSheet();
  const when = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeStyle: 'short' });
  const seen = new Set<string>();
  const lines = people.changes.map((change) => {
    const group = `${change.personId} ${change.kind.startsWith('code') || change.kind === 'password' ? 'code' : 'standing'}`;
    const last = !seen.has(group);
    if (undoable.includes(change.kind) || change.kind === 'password') seen.add(group);
    return { change, last: last && undoable.includes(change.kind) };
  });
  return (
    <section className="sheet-part">
      <h2>{t('acc.changes')}</h2>
      <ul className="account-list">
        {lines.map(({ change, last }) => {
          const name = people.people.find((person) => person.id === change.personId)?.name ?? '';
          const mine = people.people.find((person) => person.id === change.personId)?.mayChange === true;
          const key = `acc.kind.${change.kind}`;
          const what = isMessageKey(key) ? t(key, { name, now: standingWords(change.now, people, t) }) : name;
          return (
            <li key={change.id}>
              <span>{t('acc.changeLine', { what, by: change.by, at: when.format(new Date(change.at)) })}</span>
              {last && mine && (
                <Button className="quiet-button" onPress={() => void onUndo(change.id)}>
                  {t('acc.undo')}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function standingWords(now: Partial<Standing>, people: People, t: Translate): string {
  const branch = people.branches.find((one) => one.id === now.branchId)?.name ?? t('acc.everyBranch');
  const role = now.role === undefined ? '' : t(`acc.role.${now.role}`);
  return [role, branch, now.disabled ? t('acc.disabled') : ''].filter(Boolean).join(', ');
}
