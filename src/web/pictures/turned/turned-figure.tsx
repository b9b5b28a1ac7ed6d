// The turned box under the title that states how heater and probe stand to each other, with the ways to turn it.
import './turned.css';
import { useRef, useState } from 'react';
import type { Enclosure } from '../../../physics/enclosure.ts';
import { useSheet } from '../../settings/settings-context.tsx';
import { useWidth } from '../../settings/use-width.ts';
import type { Readings } from '../readings.ts';
import type { WantedClimate } from '../wanted.ts';
import { heaterHeightM } from './things.ts';
import type { Turn } from './turn.ts';
import { TurnedBox } from './turned-box.tsx';

interface TurnedFigureProps {
  readonly enclosure: Enclosure;
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
}

const first: Turn = { aroundDeg: 28, aboveDeg: 24 };
/** Degrees for each unit the finger goes. */
const degPerUnit = 0.5;
const inRange = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

export function TurnedFigure({ enclosure, readings, climate }: TurnedFigureProps) {
  const { t, measure } = useSheet();
  const [ref, width] = useWidth<HTMLDivElement>(520);
  const [turn, setTurn] = useState(first);
  const from = useRef<{ readonly x: number; readonly y: number; readonly turn: Turn } | null>(null);
  const heater = enclosure.heaters[0];
  const probe = enclosure.thermostats[0]?.probe;
  const apartM =
    heater && probe
      ? Math.hypot(
          heater.xM - probe.xM,
          heater.yM - probe.yM,
          heaterHeightM(heater, enclosure.substrate?.depthM ?? 0, enclosure.box.heightM) - probe.zM,
        )
      : null;
  const title =
    apartM === null || !probe
      ? t('turned.label')
      : t('turned.found', { apart: measure.text('length', apartM), height: measure.text('length', probe.zM) });
  return (
    <div className="turned" ref={ref}>
      <p className="turned-found" id="turned-title">
        {title}
      </p>
      <div
        className="turned-stage"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          from.current = { x: event.clientX, y: event.clientY, turn };
        }}
        onPointerMove={(event) => {
          const start = from.current;
          if (!start) return;
          setTurn({
            aroundDeg: inRange(start.turn.aroundDeg + (start.x - event.clientX) * degPerUnit, -180, 180),
            aboveDeg: inRange(start.turn.aboveDeg + (event.clientY - start.y) * degPerUnit, 0, 90),
          });
        }}
        onPointerUp={() => {
          from.current = null;
        }}
        onPointerCancel={() => {
          from.current = null;
        }}
      >
        <TurnedBox
          enclosure={enclosure}
          readings={readings}
          climate={climate}
          turn={turn}
          width={Math.max(280, width)}
          label={t('turned.label')}
          describedBy="turned-title turned-say"
        />
      </div>
      <p id="turned-say" className="field-hint">
        {t('turned.say')}
      </p>
      <div className="turned-controls">
        <label className="turned-control">
          <span className="field-label">{t('turned.around')}</span>
          <input
            type="range"
            min={-180}
            max={180}
            step={5}
            value={turn.aroundDeg}
            aria-valuetext={`${Math.round(turn.aroundDeg)}°`}
            onChange={(event) => setTurn((now) => ({ ...now, aroundDeg: Number(event.target.value) }))}
          />
        </label>
        <label className="turned-control">
          <span className="field-label">{t('turned.above')}</span>
          <input
            type="range"
            min={0}
            max={90}
            step={5}
            value={turn.aboveDeg}
            aria-valuetext={`${Math.round(turn.aboveDeg)}°`}
            onChange={(event) => setTurn((now) => ({ ...now, aboveDeg: Number(event.target.value) }))}
          />
        </label>
        <button type="button" className="quiet-button" onClick={() => setTurn(first)}>
          {t('turned.back')}
        </button>
      </div>
    </div>
  );
}
