// Adding a person, who then chooses a password with a code, and adding a branch.
import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Place } from '../../husbandry/law-rule.ts';
import type { Asked } from '../animal/animal-api.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';
import { addBranch, addPerson, type Branch } from './account-api.ts';
import { faultsByField } from './fault-words.ts';
import { type PersonRole, useMe } from './here.ts';
import type { GivenCode } from './people-page.tsx';
import { BranchSelect, roles } from './person-row.tsx';
import { PlaceRow } from './set-up.tsx';
import { TextRow } from './text-row.tsx';

interface AddPersonProps {
  readonly branches: readonly Branch[];
  readonly onAdded: () => void;
  readonly onCode: (given: GivenCode) => void;
}

export function AddPerson({ branches, onAdded, onCode }: AddPersonProps) {
  const { t } = useSheet();
  const me = useMe();
  const { now, change, forget } = useBegun('add-person', {
    name: '',
    role: 'assistant' as PersonRole,
    branchId: me?.branchId ?? null,
  });
  const { name, role, branchId } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const faults = faultsByField(answer, ['name'], t);
  const add = async (event: FormEvent) => {
    event.preventDefault();
    const added = await addPerson({ name, role, branchId });
    setAnswer(added);
    if (!added.ok) return;
    onCode({ name, code: added.value.code });
    forget();
    onAdded();
    scrollTo(0, 0);
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.addPerson')}</h2>
      <form className="account-form" onSubmit={(event) => void add(event)}>
        <TextRow
          label={t('acc.name')}
          value={name}
          onChange={(next) => change({ name: next })}
          hint={t('help.acc.personName')}
          fault={faults.name}
        />
        <div className="account-row">
          <label>
            <span className="field-label">{t('acc.role')}</span>
            <select
              className="text-input"
              value={role}
              aria-describedby="add-role-help"
              onChange={(event) => change({ role: event.target.value as PersonRole })}
            >
              {roles.map((one) => (
                <option key={one} value={one}>
                  {t(`acc.role.${one}`)}
                </option>
              ))}
            </select>
          </label>
          <HelpLine id="add-role-help" text={t(`help.role.${role}`)} />
        </div>
        <BranchSelect
          label={t('acc.branch')}
          hint={t('help.acc.branch')}
          branches={branches}
          value={branchId}
          onChange={(next) => change({ branchId: next })}
        />
        <p className="field-fault" role="alert">
          {faults['']}
        </p>
        <Button type="submit" className="button">
          {t('acc.personAdd')}
        </Button>
      </form>
    </section>
  );
}

export function AddBranch({ places, onAdded }: { readonly places: readonly Place[]; readonly onAdded: () => void }) {
  const { t } = useSheet();
  const { now, change, forget } = useBegun('add-branch', { name: '', place: '' });
  const { name, place } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const faults = faultsByField(answer, ['name', 'place'], t);
  const add = async (event: FormEvent) => {
    event.preventDefault();
    const added = await addBranch(name, place);
    setAnswer(added);
    if (!added.ok) return;
    forget();
    onAdded();
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.addBranch')}</h2>
      <form className="account-form" onSubmit={(event) => void add(event)}>
        <TextRow
          label={t('acc.branch')}
          value={name}
          onChange={(next) => change({ name: next })}
          hint={t('acc.branchHint')}
          fault={faults.name}
        />
        <PlaceRow value={place} onChange={(next) => change({ place: next })} places={places} fault={faults.place} />
        <Button type="submit" className="button button-quiet">
          {t('acc.personAdd')}
        </Button>
      </form>
    </section>
  );
}
