// A number that is tried out: the same field with a slider under it, for moving while watching the drawing.
import { Slider, SliderThumb, SliderTrack } from 'react-aria-components';
import { shownFromStored, storedFromShown } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { QuantityField, type QuantityFieldProps } from './quantity-field.tsx';

interface QuantityDialProps extends QuantityFieldProps {
  readonly value: number;
  /** Step of the slider in the stored unit. */
  readonly step: number;
}

export function QuantityDial(props: QuantityDialProps) {
  const { settings } = useSheet();
  const { kind, value, min, max } = props;
  const shown = (stored: number) => shownFromStored(kind, stored, settings);
  const step = shown(min + props.step) - shown(min);
  return (
    <div className="dial">
      <QuantityField {...props} compact />
      <Slider
        className="slider"
        aria-label={props.label}
        value={shown(value)}
        minValue={shown(min)}
        maxValue={shown(max)}
        step={step}
        onChange={(next) => props.onChange(Number(storedFromShown(kind, next, settings).toFixed(4)))}
        formatOptions={{ maximumFractionDigits: 1 }}
      >
        <SliderTrack className="slider-track">
          {({ state }) => (
            <>
              <div className="slider-line" />
              <div className="slider-fill" style={{ width: `${state.getThumbPercent(0) * 100}%` }} />
              <SliderThumb className="slider-thumb" />
            </>
          )}
        </SliderTrack>
      </Slider>
    </div>
  );
}
