// The first start: whoever has the code from the terminal names the shop and becomes its owner.
import { useState } from 'react';
import type { Place } from '../../husbandry/law-rule.ts';
import { HelpLine } from '../controls/help-line.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { setUp } from './account-api.ts';
import { DoorFrame } from './door-frame.tsx';
import { faultsByField } from './fault-words.ts';
import { EntryButton, useEntry } from './sign-in.tsx';
import { TextRow } from './text-row.tsx';

const fields = ['code', 'shopName', 'branchName', 'place', 'name', 'password'] as const;

export function SetUp({ places }: { readonly places: readonly Place[] }) {
  const { t } = useSheet();
  const [said, setSaid] = useState({ code: '', shopName: '', branchName: '', place: '', name: '', password: '' });
  const entry = useEntry(() => setUp(said));
  const faults = faultsByField(entry.answer, fields, t);
  const row = (field: (typeof fields)[number]) => ({
    value: said[field],
    onChange: (value: string) => setSaid((now) => ({ ...now, [field]: value })),
    fault: faults[field],
  });
  return (
    <DoorFrame title={t('acc.setUpTitle')} lead={t('acc.setUpLead')}>
      <form className="door-fields" onSubmit={entry.submit}>
        <TextRow {...row('code')} label={t('acc.setUpCode')} hint={t('acc.setUpCodeHint')} autoFocus />
        <TextRow
          {...row('shopName')}
          label={t('acc.shopName')}
          hint={t('help.acc.shopName')}
          autoComplete="organization"
        />
        <TextRow {...row('branchName')} label={t('acc.branchName')} hint={t('acc.branchHint')} />
        <PlaceRow {...row('place')} places={places} />
        <TextRow {...row('name')} label={t('acc.yourName')} hint={t('acc.nameHint')} autoComplete="username" />
        <TextRow
          {...row('password')}
          label={t('acc.password')}
          type="password"
          hint={t('acc.passwordHint')}
          autoComplete="new-password"
        />
        <EntryButton entry={entry} label={t('acc.setUpDo')} fields={fields} />
      </form>
    </DoorFrame>
  );
}

interface PlaceRowProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly fault?: string | undefined;
  readonly places: readonly Place[];
}

export function PlaceRow({ value, onChange, fault, places }: PlaceRowProps) {
  const { t } = useSheet();
  return (
    <div className="account-row">
      <label>
        <span className="field-label">{t('acc.place')}</span>
        <select
          className="text-input"
          value={value}
          aria-describedby="place-help"
          onChange={(event) => onChange(event.target.value)}
        >
          <option value="">{t('acc.placeChoose')}</option>
          {places.map((place) => (
            <option key={place} value={place}>
              {t(`lawplace.${place}`)}
            </option>
          ))}
        </select>
      </label>
      <HelpLine id="place-help" text={t('help.acc.place')} />
      {fault && <span className="field-fault">{fault}</span>}
    </div>
  );
}
