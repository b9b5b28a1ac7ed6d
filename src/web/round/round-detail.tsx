// What is not as it should be in one enclosure: seen or not, water, lock, readings, a word.
import { Button } from 'react-aria-components';
import type { EventBodies } from '../../animal/event.ts';
import { Choice } from '../controls/choice.tsx';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun } from '../state/begun.ts';

type Body = EventBodies['round'];

interface RoundDetailProps {
  readonly start: Body;
  readonly place: string;
  readonly onKeep: (body: Body) => void;
  readonly onClose: () => void;
}

export const roundPlace = (place: string): string => `round-${place}`;

export function RoundDetail({ start, place, onKeep, onClose }: RoundDetailProps) {
  const { t } = useSheet();
  const { now: body, newest, change, forget } = useBegun(roundPlace(place), start);
  const flags = [
    ['water', t('round.water')],
    ['locked', t('round.locked')],
    ['droppings', t('round.droppings')],
  ] as const;
  return (
    <div className="round-detail">
      <Choice<Body['state']>
        label={place}
        hideLabel
        value={body.state}
        onChange={(state) => change({ state })}
        options={[
          { value: 'well', text: t('round.seen') },
          { value: 'look', text: t('round.seenOdd') },
          { value: 'not-seen', text: t('round.notSeen') },
        ]}
      />
      <div className="round-flags">
        {flags.map(([name, label]) => (
          <label key={name} className="checkline">
            <input
              type="checkbox"
              checked={body[name]}
              onChange={(event) => change({ [name]: event.target.checked })}
            />
            {label}
          </label>
        ))}
      </div>
      <div className="field-row">
        <QuantityField
          label={t('round.warm')}
          kind="temperature"
          value={body.warmC}
          min={-5}
          max={60}
          compact
          onChange={(warmC) => change({ warmC })}
        />
        <QuantityField
          label={t('round.cool')}
          kind="temperature"
          value={body.coolC}
          min={-5}
          max={60}
          compact
          onChange={(coolC) => change({ coolC })}
        />
        <QuantityField
          label={t('round.rh')}
          kind="percent"
          value={body.rhPct}
          min={0}
          max={100}
          digits={0}
          compact
          onChange={(rhPct) => change({ rhPct })}
        />
      </div>
      <label className="field-label" htmlFor={`round-note-${place}`}>
        {t('round.note')}
      </label>
      <input
        id={`round-note-${place}`}
        className="text-input"
        value={body.note}
        maxLength={2000}
        onChange={(event) => change({ note: event.target.value })}
      />
      <div className="look-buttons">
        <Button
          className="button button-quiet"
          onPress={() => {
            forget();
            onClose();
          }}
        >
          {t('round.close')}
        </Button>
        <Button
          className="button"
          onPress={() => {
            onKeep(newest());
            forget();
          }}
        >
          {t('round.keep')}
        </Button>
      </div>
    </div>
  );
}
