// One number with its unit: typed, stepped by big buttons, or by arrow keys. Speaks the person's units, stores ours.
import { Button, FieldError, Group, Input, Label, NumberField, Text } from 'react-aria-components';
import { type QuantityKind, shownFromStored, storedFromShown, unitText } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';

export interface QuantityFieldProps {
  readonly label: string;
  readonly kind: QuantityKind;
  /** Stored value (°C, m, W, g, %); null while nobody has answered. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly min: number;
  readonly max: number;
  readonly digits?: number;
  readonly hint?: string;
  readonly fault?: string | null;
  readonly compact?: boolean;
  readonly isDisabled?: boolean;
}

/** Rounds away the noise of changing units, to a ten-thousandth of the stored unit. */
const tidy = (value: number): number => Number(value.toFixed(4));

export function QuantityField(props: QuantityFieldProps) {
  const { settings, t } = useSheet();
  const { kind, value } = props;
  const digits = kind === 'mass' && settings.mass === 'oz' ? 2 : (props.digits ?? 1);
  const shown = (stored: number) => Number(shownFromStored(kind, stored, settings).toFixed(digits));
  const unit = unitText(kind, settings);
  return (
    <NumberField
      className={props.compact ? 'quantity quantity-compact' : 'quantity'}
      value={value === null ? Number.NaN : shown(value)}
      onChange={(next) => {
        if (Number.isNaN(next)) props.onChange(null);
        else if (value === null || next !== shown(value)) props.onChange(tidy(storedFromShown(kind, next, settings)));
      }}
      minValue={shown(props.min)}
      maxValue={shown(props.max)}
      formatOptions={{ maximumFractionDigits: digits, useGrouping: false }}
      isInvalid={Boolean(props.fault)}
      isWheelDisabled
      isDisabled={props.isDisabled ?? false}
      incrementAriaLabel={t('field.more', { name: props.label })}
      decrementAriaLabel={t('field.less', { name: props.label })}
    >
      <Label className="field-label">
        {props.label} <span className="visually-hidden">({unit})</span>
      </Label>
      <Group className="quantity-group">
        <Button slot="decrement" className="step-button">
          −
        </Button>
        <Input className="quantity-input" inputMode="decimal" />
        <span className="quantity-unit" aria-hidden="true">
          {unit}
        </span>
        <Button slot="increment" className="step-button">
          +
        </Button>
      </Group>
      {props.hint && (
        <Text slot="description" className="field-hint">
          {props.hint}
        </Text>
      )}
      <FieldError className="field-fault">{props.fault}</FieldError>
    </NumberField>
  );
}
