// One number with its unit: typed, stepped by big buttons, or by arrow keys. Speaks the person's units, stores ours.
import { type QuantityKind, shownFromStored, storedFromShown, unitText } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { NumberEntry } from './number-entry.tsx';

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
  /** Id of a line that several fields share. */
  readonly describedBy?: string;
  readonly fault?: string | null;
  readonly compact?: boolean;
  readonly isDisabled?: boolean;
}

/** Rounds away the noise of changing units, to a ten-thousandth of the stored unit. */
const tidy = (value: number): number => Number(value.toFixed(4));

export function QuantityField(props: QuantityFieldProps) {
  const { settings, measure, t } = useSheet();
  const { kind, value } = props;
  const digits = kind === 'mass' && settings.mass === 'oz' ? 2 : (props.digits ?? 1);
  const shown = (stored: number) => Number(shownFromStored(kind, stored, settings).toFixed(digits));
  const unit = unitText(kind, settings);
  return (
    <NumberEntry
      className={props.compact ? 'quantity quantity-compact' : 'quantity'}
      label={
        <>
          {props.label} <span className="visually-hidden">({unit})</span>
        </>
      }
      unit={unit}
      locale={measure.locale}
      value={value === null ? null : shown(value)}
      onChange={(next) => props.onChange(next === null ? null : tidy(storedFromShown(kind, next, settings)))}
      min={shown(props.min)}
      max={shown(props.max)}
      digits={digits}
      more={t('field.more', { name: props.label })}
      less={t('field.less', { name: props.label })}
      hint={props.hint}
      describedBy={props.describedBy}
      fault={props.fault}
      isDisabled={props.isDisabled ?? false}
    />
  );
}
