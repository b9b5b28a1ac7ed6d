// Dial X, expect Y here and Z there: for day and night, with the spread over the versions of the box, and which of the
// possible probe places tells most about the basking site. Leaves out: the room of a given day, which the plan shows.
import type { Thermostat } from '../../physics/enclosure.ts';
import { intervalOf } from '../interval.ts';
import type { Interval } from '../plan-answer.ts';
import { type Behaviour, kitPowers } from '../search/judge-kit.ts';
import { heldPowerW, type LineQuantity, type MemberSurface, onLine, type WattLine } from '../search/surface.ts';
import { dialForReading } from './dial-setting.ts';

export interface DialExpectation {
  readonly setC: number;
  readonly roomC: number;
  readonly baskingC: Interval;
  readonly warmHideC: Interval | null;
  readonly warmAirC: Interval;
  readonly coolAirC: Interval;
  readonly probeC: Interval;
}

export interface ProbePlace {
  readonly probe: Thermostat['probe'];
  /** Dial that gives the wanted basking surface with the probe there. */
  readonly dialC: Interval;
}

export interface DialCard {
  /** Dial to start with by day: that of the best-estimate version, the half degree below. */
  readonly setDayC: number;
  readonly setNightC: number;
  /** Where the day dial may end up once trimmed by a thermometer at the basking site. */
  readonly dayDialC: Interval;
  /** With the dial left at setDayC, nothing trimmed: winter day. */
  readonly day: DialExpectation;
  readonly night: DialExpectation;
  readonly summer: DialExpectation;
  /** The dial left where winter put it: at part duty in a mild room. */
  readonly mid: DialExpectation;
  /** Probe places by how little the dial is in doubt, best first; the first entry of the kit's own probe is marked. */
  readonly probes: readonly (ProbePlace & { readonly chosen: boolean })[];
}

/** @param probes of the arrangement: its own first, then the spare ones */
export function dialCard(
  surfaces: readonly MemberSurface[],
  b: Behaviour,
  probes: readonly Thermostat['probe'][],
): DialCard {
  const powers = surfaces.map((s) => kitPowers(s, b));
  const dayDialC = intervalOf(powers.map((p) => p.dialC));
  const { setDayC, setNightC } = b;
  const rated = (s: MemberSurface, night: boolean) => (night ? b.nightPowerW : b.powerW) * s.heaterPower;
  const expect = (pick: (s: MemberSurface) => WattLine, setC: number, night: boolean): DialExpectation => {
    const lines = surfaces.map(pick);
    const watts = lines.map((line, i) =>
      heldPowerW(line, setC, night ? b.nightBandK : b.bandK, rated(surfaces[i]!, night)),
    );
    const spread = (q: LineQuantity) => intervalOf(lines.map((line, i) => onLine(line, q, watts[i]!)));
    const hide = spread('warm-hide');
    return {
      setC,
      roomC: lines[0]?.roomC ?? Number.NaN,
      baskingC: spread('basking-surface'),
      warmHideC: Number.isNaN(hide.median) ? null : hide,
      warmAirC: spread('warm-air'),
      coolAirC: spread('cool-air'),
      probeC: spread('probeC'),
    };
  };
  const places = (['probeC', 'otherProbe0C', 'otherProbe1C'] as const).flatMap((quantity, i) => {
    const probe = probes[i];
    if (!probe) return [];
    const values = surfaces.map((s, k) => {
      const { dayW } = powers[k]!;
      return dialForReading(b.bandK, onLine(s.day, quantity, dayW), dayW / rated(s, false));
    });
    return values.some(Number.isNaN) ? [] : [{ probe, dialC: intervalOf(values), chosen: i === 0 }];
  });
  return {
    setDayC,
    setNightC,
    dayDialC,
    day: expect((s) => s.day, setDayC, false),
    night: expect((s) => s.night, setNightC, true),
    summer: expect((s) => s.summer, setDayC, false),
    mid: expect((s) => s.mid, setDayC, false),
    probes: places.sort((a, c) => widthOf(a.dialC) - widthOf(c.dialC)),
  };
}

const widthOf = (i: Interval): number => i.high - i.low;
