// One person of the shop: name, role, branch, and what may be done.
import { useId } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type Branch, changePerson, giveCode, type PersonLine, type Standing } from './account-api.ts';
import type { PersonRole } from './here.ts';
import type { GivenCode } from './people-page.tsx';

export const roles: readonly PersonRole[] = ['assistant', 'manager', 'inspector', 'owner'];

interface PersonRowProps {
  readonly person: PersonLine;
  readonly branches: readonly Branch[];
  readonly onDone: (answer: Asked<unknown>) => void;
  readonly onCode: (given: GivenCode) => void;
}

export function PersonRow({ person, branches, onDone, onCode }: PersonRowProps) {
  const { t } = useSheet();
  const put = async (part: Partial<Standing>) => onDone(await changePerson(person.id, part));
  const code = async () => {
    const given = await giveCode(person.id);
    if (given.ok) onCode({ name: person.name, code: given.value.code });
    onDone(given);
  };
  const notes = [
    ...(person.disabled ? [t('acc.disabled')] : []),
    ...(person.hasPassword ? [] : [t('acc.noPassword')]),
    ...(person.mayChange ? [] : [t(`acc.role.${person.role}`)]),
  ];
  return (
    <li>
      <span className={person.disabled ? 'account-name account-off' : 'account-name'}>{person.name}</span>
      {notes.length > 0 && <span className="account-soft">{notes.join(', ')}</span>}
      {person.mayChange && (
        <div className="account-tools">
          <label>
            <span className="visually-hidden">{`${t('acc.role')}: ${person.name}`}</span>
            <select
              className="text-input account-select"
              value={person.role}
              onChange={(event) => void put({ role: event.target.value as PersonRole })}
            >
              {roles.map((role) => (
                <option key={role} value={role}>
                  {t(`acc.role.${role}`)}
                </option>
              ))}
            </select>
          </label>
          <BranchSelect
            label={`${t('acc.branch')}: ${person.name}`}
            hideLabel
            branches={branches}
            value={person.branchId}
            onChange={(branchId) => void put({ branchId })}
          />
          <Button className="quiet-button" onPress={() => void code()}>
            {t('acc.newCode')}
          </Button>
          <Button className="quiet-button" onPress={() => void put({ disabled: !person.disabled })}>
            {t(person.disabled ? 'acc.enable' : 'acc.disable')}
          </Button>
        </div>
      )}
    </li>
  );
}

interface BranchSelectProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly hint?: string;
  readonly branches: readonly Branch[];
  readonly value: string | null;
  readonly onChange: (branchId: string | null) => void;
}

export function BranchSelect({ label, hideLabel, hint, branches, value, onChange }: BranchSelectProps) {
  const { t } = useSheet();
  const id = useId();
  return (
    <div className={hideLabel ? undefined : 'account-row'}>
      <label>
        <span className={hideLabel ? 'visually-hidden' : 'field-label'}>{label}</span>
        <select
          className={hideLabel ? 'text-input account-select' : 'text-input'}
          value={value ?? ''}
          aria-describedby={hint && `${id}-help`}
          onChange={(event) => onChange(event.target.value === '' ? null : event.target.value)}
        >
          <option value="">{t('acc.everyBranch')}</option>
          {branches.map((branch) => (
            <option key={branch.id} value={branch.id}>
              {branch.name}
            </option>
          ))}
        </select>
      </label>
      <HelpLine id={`${id}-help`} text={hint} />
    </div>
  );
}
