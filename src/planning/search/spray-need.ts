// Does what is sprayed dry in the home with this kit? The same need as in the plan (spray-verdict.ts), for the list of what no
// heater mends. Leaves out the versions where the best estimate dries far more than is sprayed.
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { boxGeometry, modelFrom } from '../../physics/simulate.ts';
import { drawMembers } from '../ensemble.ts';
import { baskingAimC, keeperTrims } from '../member.ts';
import { sprayVerdict } from '../spray-verdict.ts';
import { driesGPerDay, type HeldBy, sprayedGPerDay } from '../wet-floor.ts';
import type { SearchInput } from './search-input.ts';

/** Where the best estimate dries so many times what is sprayed, the versions are not asked: in six boxes 95 of 100 dried more
 *  than 0.6 of the median. Our choice. */
const surelyTimes = 2.5;

/** The need where it does not hold, or none. */
export function openSprayNeed(home: Enclosure, input: SearchInput): NeedVerdict[] {
  const sprayed = sprayedGPerDay(home);
  if (sprayed <= 0) return [];
  const geometry = boxGeometry(home, input.facts.materials);
  const held: HeldBy = { day: keeperTrims(home) ? { holdBaskingC: baskingAimC(input.climate) } : {}, night: {} };
  const dries = (some: number) =>
    drawMembers(input.priors, some, input.seed).map((set) => driesGPerDay(modelFrom(geometry, set), held));
  const [best] = dries(1);
  if (best && Math.min(best.winter, best.summer) > surelyTimes * sprayed) return [];
  return sprayVerdict(home, dries(input.members)).filter((n) => n.verdict !== 'holds');
}
