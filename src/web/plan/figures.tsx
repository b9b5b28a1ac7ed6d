// The pictures of the plan, each under a title that states its finding and before a table of its numbers.
import { memo, useMemo } from 'react';
import type { DayAnswer, PlaceId } from '../../physics/answer.ts';
import { placeIds } from '../../physics/answer.ts';
import type { DayPeriod, Enclosure } from '../../physics/enclosure.ts';
import { dayField } from '../pictures/day-field.ts';
import { FloorPlan } from '../pictures/floor-plan.tsx';
import { GradientMap } from '../pictures/gradient-map.tsx';
import { type Readings, rowAtHour } from '../pictures/readings.ts';
import { SectionDrawing } from '../pictures/section-drawing.tsx';
import type { SectionMoves } from '../pictures/section-handles.tsx';
import { type WantedClimate, wantedAtPlace } from '../pictures/wanted.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { floorFinding, mapFinding, sectionFinding } from './findings.ts';
import type { Season } from './moment.ts';

interface FigureProps {
  readonly enclosure: Enclosure;
  readonly climate: WantedClimate | null;
  readonly width: number;
}

export function SectionFigure(
  props: FigureProps & {
    readonly readings: Readings | null;
    readonly moves: SectionMoves;
    readonly mostInsideHeight: number;
  },
) {
  const { t, measure } = useSheet();
  const { readings, climate } = props;
  const title = readings ? sectionFinding(readings, climate, t, measure) : t('section.label');
  return (
    <figure className="figure" data-figure="section">
      <figcaption className="figure-title" id="section-title" aria-live="off">
        {title}
      </figcaption>
      <SectionDrawing {...props} describedBy="section-title section-say" />
      <p id="section-say" className="visually-hidden">
        {t('section.say')}
      </p>
      {readings && <PlacesTable readings={readings} climate={climate} />}
    </figure>
  );
}

function PlacesTable({ readings, climate }: { readonly readings: Readings; readonly climate: WantedClimate | null }) {
  const { t, measure } = useSheet();
  const rows = placeIds.filter((place) => typeof readings.places[place] === 'number');
  return (
    <details className="table-behind">
      <summary>{t('table.behind')}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('table.place')}</th>
            <th scope="col">{t('table.now')}</th>
            <th scope="col">{t('table.range')}</th>
            <th scope="col">{t('table.wanted')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((place: PlaceId) => {
            const wanted = climate && wantedAtPlace(place, readings.isDay, climate);
            const interval = readings.interval[place];
            return (
              <tr key={place}>
                <th scope="row">{t(`place.${place}`)}</th>
                <td>{measure.text('temperature', readings.places[place] ?? Number.NaN)}</td>
                <td>{interval ? measure.span('temperature', interval.low, interval.high, 1) : '–'}</td>
                <td>{wanted ? measure.span('temperature', wanted.lowC, wanted.highC) : '–'}</td>
              </tr>
            );
          })}
          <tr>
            <th scope="row">{t('table.room')}</th>
            <td>{measure.text('temperature', readings.roomC)}</td>
            <td>–</td>
            <td>–</td>
          </tr>
          <tr>
            <th scope="row">{t('table.humidity')}</th>
            <td colSpan={3}>
              {t('table.humidityBoth', {
                warm: measure.text('percent', readings.warmRhPct),
                cool: measure.text('percent', readings.coolRhPct),
              })}
            </td>
          </tr>
        </tbody>
      </table>
    </details>
  );
}

export function FloorFigure(
  props: FigureProps & {
    readonly readings: Readings | null;
    readonly moves: SectionMoves;
    readonly mostInsideHeight: number;
  },
) {
  const { t, measure } = useSheet();
  const { enclosure } = props;
  return (
    <figure className="figure" data-figure="floor">
      <figcaption className="figure-title" id="floor-title">
        {floorFinding(enclosure, t, measure)}
      </figcaption>
      <FloorPlan {...props} describedBy="floor-title floor-say" />
      <p id="floor-say" className="visually-hidden">
        {t('floor.say')}
      </p>
      <details className="table-behind">
        <summary>{t('table.behind')}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('table.part')}</th>
              <th scope="col">{t('table.fromLeft')}</th>
              <th scope="col">{t('table.fromFront')}</th>
              <th scope="col">{t('table.size')}</th>
            </tr>
          </thead>
          <tbody>
            {floorParts(enclosure).map((part) => (
              <tr key={part.key}>
                <th scope="row">{t(part.name)}</th>
                <td>{measure.text('length', part.xM)}</td>
                <td>{measure.text('length', part.yM)}</td>
                <td>{part.sizeM.length ? part.sizeM.map((m) => measure.text('length', m)).join(' × ') : '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

type PartName = 'part.hide' | 'part.bowl' | 'part.heater' | 'part.probe';

function floorParts(enclosure: Enclosure) {
  const parts: { key: string; name: PartName; xM: number; yM: number; sizeM: readonly number[] }[] = [];
  for (const [i, hide] of enclosure.hides.entries())
    parts.push({ key: `hide-${i}`, name: 'part.hide', xM: hide.xM, yM: hide.yM, sizeM: [hide.lengthM, hide.depthM] });
  if (enclosure.bowl) {
    const { xM, yM, diameterM } = enclosure.bowl;
    parts.push({ key: 'bowl', name: 'part.bowl', xM, yM, sizeM: [diameterM] });
  }
  for (const heater of enclosure.heaters) {
    const sizeM = heater.lengthM && heater.depthM ? [heater.lengthM, heater.depthM] : [];
    parts.push({ key: heater.id, name: 'part.heater', xM: heater.xM, yM: heater.yM, sizeM });
  }
  for (const { id, probe } of enclosure.thermostats)
    parts.push({ key: `probe-${id}`, name: 'part.probe', xM: probe.xM, yM: probe.yM, sizeM: [] });
  return parts;
}

interface MapFigureProps {
  readonly lengthM: number;
  readonly period: DayPeriod;
  readonly climate: WantedClimate | null;
  readonly width: number;
  readonly day: DayAnswer;
  readonly season: Season;
  readonly hour: number | null;
  readonly onHour: (hour: number) => void;
  readonly stale: boolean;
  readonly mapHeight: number;
}

/** Redrawn only when its day, its hour or its place changes, so that a dragging hand does not pay for it. */
export const MapFigure = memo(function MapFigure(props: MapFigureProps) {
  const { t, measure } = useSheet();
  const { lengthM, period, day, climate, season, stale } = props;
  const field = useMemo(() => dayField(day, lengthM, period, climate), [day, lengthM, period, climate]);
  return (
    <figure className={stale ? 'figure figure-stale' : 'figure'} data-figure="map" aria-busy={stale}>
      <figcaption className="figure-title" id="map-title">
        {mapFinding(field, day, season, t, measure)}
      </figcaption>
      <GradientMap {...props} describedBy="map-title map-say" />
      <p id="map-say" className="visually-hidden">
        {t('map.say')}
      </p>
      <MapKey climate={climate} />
      <details className="table-behind">
        <summary>{t('table.behind')}</summary>
        <HourTable day={day} />
      </details>
    </figure>
  );
});

function MapKey({ climate }: { readonly climate: WantedClimate | null }) {
  const { t, measure } = useSheet();
  return (
    <p className="map-key">
      <span className="key-item">
        <svg viewBox="0 0 28 14" aria-hidden="true">
          <rect width="28" height="14" className="lvl-m2" />
          <rect width="28" height="14" fill="url(#hatch-cold)" />
        </svg>
        {t('map.tooCold')}
      </span>
      <span className="key-item">
        <svg viewBox="0 0 28 14" aria-hidden="true">
          <rect width="28" height="14" className="lvl-0 key-frame" />
        </svg>
        {t('map.wanted')}
      </span>
      <span className="key-item">
        <svg viewBox="0 0 28 14" aria-hidden="true">
          <rect width="28" height="14" className="lvl-p2" />
          <rect width="28" height="14" fill="url(#dots-warm)" />
        </svg>
        {t('map.tooWarm')}
      </span>
      {climate && (
        <span className="key-note">
          {t('map.band', {
            warm: measure.span('temperature', climate.warmLowC, climate.baskingHighC),
            cool: measure.span('temperature', climate.coolLowC, climate.coolHighC),
            night: measure.text('temperature', climate.nightLowC, 0),
          })}
        </span>
      )}
    </p>
  );
}

function HourTable({ day }: { readonly day: DayAnswer }) {
  const { t, measure } = useSheet();
  const last = day.columnXM.length - 1;
  const warmColumn = day.warmEnd === 'left' ? 0 : last;
  const columns = [warmColumn, Math.round(last / 2), last - warmColumn];
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{t('table.hour')}</th>
          <th scope="col">{t('table.warmFloor')}</th>
          <th scope="col">{t('table.middleFloor')}</th>
          <th scope="col">{t('table.coolFloor')}</th>
          <th scope="col">{t('table.heater')}</th>
          <th scope="col">{t('table.room')}</th>
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: 24 }, (_, hour) => {
          const row = rowAtHour(day, hour);
          return (
            <tr key={hour}>
              <th scope="row">{measure.clock(hour)}</th>
              {columns.map((column) => (
                <td key={column}>{measure.write('temperature', day.floorC[row]?.[column] ?? Number.NaN).num}</td>
              ))}
              <td>{measure.text('power', day.heaterW[row] ?? Number.NaN)}</td>
              <td>{measure.text('temperature', day.roomC[row] ?? Number.NaN)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
