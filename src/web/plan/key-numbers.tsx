// The four numbers that matter, large enough to read from a metre away; a strip that stays when the drawing is folded.
import type { PlaceId } from '../../physics/answer.ts';
import type { Readings } from '../pictures/readings.ts';
import { kelvinOutside, levelOf, type WantedClimate, wantedAtPlace } from '../pictures/wanted.ts';
import { useSheet } from '../settings/settings-context.tsx';

const shown: readonly PlaceId[] = ['basking-surface', 'warm-air', 'cool-floor'];

export function KeyNumbers({
  readings,
  climate,
}: {
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
}) {
  const { t, measure } = useSheet();
  if (!readings) return null;
  return (
    <dl className="key-numbers" aria-label={t('key.label')}>
      {shown.map((place) => {
        const valueC = readings.places[place];
        if (typeof valueC !== 'number') return null;
        const wanted = climate && wantedAtPlace(place, readings.isDay, climate);
        const level = wanted ? levelOf(kelvinOutside(valueC, wanted)) : 0;
        const { num, unit } = measure.write('temperature', valueC);
        return (
          <div key={place} className={level < 0 ? 'tone-cool' : level > 0 ? 'tone-warm' : ''}>
            <dt>{t(`place.${place}`)}</dt>
            <dd data-key={place}>
              {level !== 0 && (
                <span className="key-mark">
                  <span aria-hidden="true">{level < 0 ? '▼' : '▲'}</span>
                  <span className="visually-hidden">{t(level < 0 ? 'key.under' : 'key.over')}</span>
                </span>
              )}
              {num}
              <span className="unit">{unit}</span>
            </dd>
          </div>
        );
      })}
      <div>
        <dt>{t('key.heater')}</dt>
        <dd data-key="heater">
          {measure.number(readings.heaterW, 0)}
          <span className="unit">W</span>
        </dd>
      </div>
    </dl>
  );
}
