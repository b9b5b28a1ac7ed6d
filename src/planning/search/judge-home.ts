// Does one home with one kit in it hold? In a few versions of the box, read off its own lines as the search reads them
// (solve-surface.ts), its night dial as it stands. Leaves out: verdicts to rely on, which take many versions.
import { boxGeometry } from '../../physics/simulate.ts';
import { type Verdict, worstVerdict } from '../../shared/verdict.ts';
import { climateVerdicts } from '../climate-verdicts.ts';
import { meanBandK } from '../dial/dial-setting.ts';
import { drawMembers } from '../ensemble.ts';
import type { KitHeart } from '../kit/kit-enclosure.ts';
import { momentsOf } from '../member.ts';
import type { Home } from './help-changes.ts';
import { type Behaviour, judgedMember } from './judge-kit.ts';
import { type SettledStates, solveSurface } from './solve-surface.ts';
import type { SolveSetting } from './solve-task.ts';

export interface JudgedHome {
  readonly verdict: Verdict;
  /** Share of the versions tried in which the need that holds least often holds. */
  readonly chanceFrac: number;
  /** Ids of needs that do not hold. */
  readonly stillOpen: readonly string[];
}

/** Versions tried; enough to tell holds from fails, not for a verdict to rely on. */
export const helpVersions = 10;

/** What another thread is sent of a home. */
export type AskedHome = Pick<Home, 'enclosure' | 'heart'>;

export function judgeHome(
  { enclosure, heart }: AskedHome,
  { climate, materials, priors, seed }: Pick<SolveSetting, 'climate' | 'materials' | 'priors' | 'seed'>,
): JudgedHome {
  const geometry = boxGeometry(enclosure, materials);
  const moments = momentsOf(enclosure);
  const night = enclosure.thermostats[heart.nightHeater ? 1 : 0];
  const setDayC = enclosure.thermostats[0]?.setDayC ?? climate.baskingSurfaceC.low;
  const behaviour = behaviourAt(heart, setDayC, night?.setNightC ?? climate.nightMinC.low);
  let near: SettledStates | undefined;
  const members = drawMembers(priors, helpVersions, seed).map((parameters) => {
    const { surface, settled } = solveSurface(geometry, parameters, moments, climate, near);
    near ??= settled;
    return judgedMember(surface, behaviour, climate);
  });
  const needs = climateVerdicts(enclosure, climate, members, moments);
  return {
    verdict: worstVerdict(needs.map((n) => n.verdict)),
    chanceFrac: Math.min(...needs.map((n) => n.shareHolding ?? 0)),
    stillOpen: needs.filter((n) => n.verdict !== 'holds').map((n) => n.id),
  };
}

function behaviourAt(
  { heater, nightHeater, thermostat, nightThermostat }: KitHeart,
  setDayC: number,
  setNightC: number,
): Behaviour {
  return {
    powerW: heater.powerW,
    bandK: meanBandK(thermostat),
    nightPowerW: (nightHeater ?? heater).powerW,
    nightBandK: meanBandK(nightThermostat ?? thermostat),
    setDayC,
    setNightC,
    twoHeaters: nightHeater !== null,
  };
}
