// The temperatures of the floor places hung under the front view on thin strings, each with what is wanted there.
import type { PlaceId } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { Readings } from './readings.ts';
import type { SectionFrame } from './section-frame.ts';
import { spreadAlong } from './spread.ts';
import { kelvinOutside, levelOf, type WantedClimate, wantedAtPlace } from './wanted.ts';

export interface HungPlace {
  readonly place: PlaceId;
  readonly xM: number;
}

/** Floor places and where along the box each hangs: hides and basking site where they stand, the cool floor near its wall. */
export function hungPlaces(enclosure: Enclosure, readings: Readings): readonly HungPlace[] {
  const { lengthM } = enclosure.box;
  const left = readings.warmEnd === 'left';
  const warmX = enclosure.heaters[0]?.xM ?? (left ? 0.2 : 0.8) * lengthM;
  const fromWarm = [...enclosure.hides].sort((a, b) => (left ? a.xM - b.xM : b.xM - a.xM));
  const warmHide = fromWarm[0];
  const coolHide = fromWarm.length > 1 ? fromWarm.at(-1) : undefined;
  const coolX = (left ? 0.93 : 0.07) * lengthM;
  const hung: HungPlace[] = [
    { place: 'basking-surface', xM: warmX },
    { place: 'warm-hide', xM: warmHide?.xM ?? warmX },
    { place: 'cool-hide', xM: coolHide?.xM ?? coolX },
    { place: 'cool-floor', xM: coolX },
  ];
  return hung.filter(({ place }) => typeof readings.places[place] === 'number');
}

/** Narrower tags say their name smaller, and of what is wanted only the span: neighbours stay apart, and the table beside
 *  says the rest [units]. */
const wordedWidth = 84;

interface TagsProps {
  readonly enclosure: Enclosure;
  readonly frame: SectionFrame;
  readonly readings: Readings;
  readonly climate: WantedClimate | null;
}

export function HangingTags({ enclosure, frame, readings, climate }: TagsProps) {
  const { t, measure } = useSheet();
  const hung = hungPlaces(enclosure, readings);
  const floorM = enclosure.substrate?.depthM ?? 0;
  const most = frame.narrow ? 88 : 128;
  const width = Math.min(most, (frame.width - 8) / Math.max(1, hung.length));
  const centres = spreadAlong(
    hung.map(({ xM }) => frame.x(xM)),
    width,
    4,
    frame.width - 4,
  );
  return (
    <g className="tags">
      {hung.map(({ place, xM }, index) => {
        const valueC = readings.places[place] ?? Number.NaN;
        const wanted = climate && wantedAtPlace(place, readings.isDay, climate);
        const level = wanted ? levelOf(kelvinOutside(valueC, wanted)) : 0;
        const x = centres[index] ?? 0;
        const y = frame.tagsTop;
        const from = { x: frame.x(xM), y: frame.z(floorM) };
        const { num, unit } = measure.write('temperature', valueC);
        const interval = readings.interval[place];
        const tone = level < 0 ? 'tone-cool' : level > 0 ? 'tone-warm' : '';
        return (
          <g key={place} data-place={place}>
            <circle className="string-end" cx={from.x} cy={from.y} r={2.5} />
            <path className="string" d={`M${from.x} ${from.y}V${y - 12}L${x} ${y - 2}`} />
            <text
              className={width < wordedWidth ? 'tag-name tag-name-small' : 'tag-name'}
              x={x}
              y={y + 12}
              textAnchor="middle"
            >
              {t(`place.${place}`)}
            </text>
            <text className={`tag-number ${tone}`} x={x} y={y + 36} textAnchor="middle">
              {level !== 0 && <tspan className="tag-mark">{level < 0 ? '▼\u2009' : '▲\u2009'}</tspan>}
              {num}
              <tspan className="tag-unit" dx="3">
                {unit}
              </tspan>
            </text>
            {wanted && (
              <text className="tag-wanted" x={x} y={y + 53} textAnchor="middle">
                {width < wordedWidth
                  ? measure.span('temperature', wanted.lowC, wanted.highC)
                  : t('tag.wanted', { span: measure.span('temperature', wanted.lowC, wanted.highC) })}
              </text>
            )}
            {interval && width >= wordedWidth && (
              <text className="tag-range" x={x} y={y + 68} textAnchor="middle">
                {t('tag.range', {
                  low: measure.write('temperature', interval.low).num,
                  high: measure.write('temperature', interval.high).num,
                })}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
