// The price of power, the years that count, and whether what the plan shows is the customer's own already.
import { Button, Group, Input, Label, NumberField } from 'react-aria-components';
import { usualTariff } from '../../planning/search/search-input.ts';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';

interface CostSettingsProps {
  readonly tariffPerKWh: number;
  readonly years: number;
  readonly drawnIsOwned: boolean;
  readonly onTariff: (value: number) => void;
  readonly onYears: (value: number) => void;
  readonly onOwned: (value: boolean) => void;
}

export function CostSettings(props: CostSettingsProps) {
  const { t, measure } = useSheet();
  const { currency, perKWh } = usualTariff;
  return (
    <fieldset className="try-group choose-settings">
      <legend>{t('choose.settings')}</legend>
      <div className="choose-fields">
        <Stepped
          label={t('choose.tariff', { currency })}
          value={props.tariffPerKWh}
          low={0}
          high={5}
          step={0.01}
          digits={4}
          onChange={props.onTariff}
        />
        <Stepped
          label={t('choose.years')}
          value={props.years}
          low={1}
          high={30}
          step={1}
          digits={0}
          onChange={props.onYears}
        />
        <Choice
          label={t('choose.owned')}
          value={props.drawnIsOwned ? 'yes' : 'no'}
          onChange={(value) => props.onOwned(value === 'yes')}
          options={(['no', 'yes'] as const).map((value) => ({ value, text: t(`choose.owned.${value}`) }))}
        />
      </div>
      <p className="aside">{t('choose.tariffNote', { value: measure.number(perKWh, 4), currency })}</p>
    </fieldset>
  );
}

interface SteppedProps {
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly digits: number;
  readonly onChange: (value: number) => void;
}

function Stepped({ label, value, low, high, step, digits, onChange }: SteppedProps) {
  const change = (next: number) => {
    if (Number.isFinite(next)) onChange(next);
  };
  return (
    <NumberField
      className="choose-number"
      value={value}
      minValue={low}
      maxValue={high}
      {...(digits === 0 ? { step } : {})}
      formatOptions={{ maximumFractionDigits: digits }}
      onChange={change}
    >
      <Label className="field-label">{label}</Label>
      <Group className="choose-number-row">
        <Button slot="decrement" className="choose-step">
          −
        </Button>
        <Input className="choose-input" />
        <Button slot="increment" className="choose-step">
          +
        </Button>
      </Group>
    </NumberField>
  );
}
