// The fields of the register as a form: free text, a day, or a choice; "asked, not known" is an answer of its own.
import { Input, Label, Text, TextField } from 'react-aria-components';
import {
  choicesOf,
  isDateField,
  type RegisterEntry,
  type RegisterField,
  registerFields,
} from '../../animal/register.ts';
import { choiceWords, fieldWords } from '../../animal/words/register.ts';
import { HelpLine, useHelp } from '../controls/help-line.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useSaying } from './say.ts';
import { useSpecies } from './use-species.ts';

interface RegisterFieldsProps {
  readonly values: RegisterEntry;
  readonly onChange: (field: RegisterField, value: string) => void;
  /** Field -> what is wrong with it. */
  readonly wrong: Readonly<Record<string, string>>;
}

export function RegisterFields({ values, onChange, wrong }: RegisterFieldsProps) {
  return (
    <div className="register-fields">
      {registerFields.map((field) => (
        <OneField
          key={field}
          field={field}
          value={values[field] ?? ''}
          wrong={wrong[field] ?? null}
          onChange={(value) => onChange(field, value)}
        />
      ))}
    </div>
  );
}

interface OneFieldProps {
  readonly field: RegisterField;
  readonly value: string;
  readonly wrong: string | null;
  readonly onChange: (value: string) => void;
}

function OneField({ field, value, wrong, onChange }: OneFieldProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { all } = useSpecies();
  const label = say.spoken(fieldWords[field]);
  const id = `register-${field}`;
  const help = useHelp()(`register.${field}`);
  const choices =
    field === 'speciesId'
      ? all.map((one) => ({ value: one.id, text: `${one.commonName} (${one.scientificName})` }))
      : choicesOf(field)?.map((word) => ({
          value: word,
          text: choiceWords[word] ? say.spoken(choiceWords[word]) : word,
        }));
  const fault = wrong && <span className="field-fault">{wrong}</span>;
  if (choices)
    return (
      <div className="text-field">
        <label className="field-label" htmlFor={id}>
          {label}
        </label>
        <select
          id={id}
          className="select-plain"
          value={value}
          aria-describedby={help && `${id}-help`}
          onChange={(event) => onChange(event.target.value)}
        >
          <option value="">{t('takeIn.open')}</option>
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.text}
            </option>
          ))}
        </select>
        <HelpLine id={`${id}-help`} text={help} />
        {fault}
      </div>
    );
  const day = isDateField(field);
  return (
    <TextField className="text-field" value={value === 'unknown' ? '' : value} onChange={onChange}>
      <Label className="field-label">{label}</Label>
      <Input className="text-input" type={day ? 'date' : 'text'} />
      {(day || field === 'supplierContact') && (
        <label className="checkline">
          <input
            type="checkbox"
            checked={value === 'unknown'}
            onChange={(event) => onChange(event.target.checked ? 'unknown' : '')}
          />
          {t('takeIn.unknown')}
        </label>
      )}
      {help && (
        <Text slot="description" className="field-hint">
          {help}
        </Text>
      )}
      {fault}
    </TextField>
  );
}
