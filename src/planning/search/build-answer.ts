// From the state of a search to its answer, at any moment: choices with verdicts, dials and costs, and why others fell out.

import { judgeEnclosure } from '../../husbandry/judge-enclosure.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import { climateVerdicts } from '../climate-verdicts.ts';
import { yearlyEnergy } from '../cost/yearly-energy.ts';
import { dialCard } from '../dial/dial-card.ts';
import { intervalOf } from '../interval.ts';
import type { Kit } from '../kit/kit.ts';
import { type KitHeart, kitEnclosure, restDialC } from '../kit/kit-enclosure.ts';
import { baskingAimC } from '../member.ts';
import type { Interval } from '../plan-answer.ts';
import { judgedMember, kitNeeds, kitPowers, needMargins } from './judge-kit.ts';
import { type ArrangementState, type KitGroup, type Ranked, wantedChoices } from './kit-search.ts';
import { kitCost, type PreparedSearch } from './prepare-search.ts';
import type { FellOut, KitChoice, SearchAnswer, WeakestNeed } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';
import { openSprayNeed } from './spray-need.ts';
import { type MemberSurface, onLine, perWatt } from './surface.ts';
import { estimateOf, judgedSpread } from './tally.ts';

/** Choices worked out in full, and cheaper kits named; our choice of how much a person looks at. */
const shownChoices = 6;
const shownFellOut = 12;

export function searchAnswer(input: SearchInput, prepared: PreparedSearch): SearchAnswer {
  const { search, candidates } = prepared;
  const settled = search.isDone();
  const ranking = settled ? search.offers() : search.ranking();
  // what fails is named only where too little may hold
  const useful = ranking.filter((r) => r.key.verdict !== 'fails');
  const choices = (useful.length < wantedChoices ? ranking.slice(0, wantedChoices) : useful.slice(0, shownChoices)).map(
    (r) => choiceOf(r, input),
  );
  const first = choices[0];
  const fell = first ? cheaper(ranking[0]!, prepared) : [];
  const work = search.work();
  return {
    settled,
    choices,
    fellOut: fell.slice(0, shownFellOut).map((f) => fellOutOf(f, input)),
    fellOutCount: fell.length,
    kitsTried: candidates.kits.reduce((sum, kits) => sum + kits.length, 0),
    refusals: candidates.refusals,
    kitsRefused: candidates.refused,
    none: noneHolds(first),
    noneNeed: openNeed(first),
    homeNeeds: first ? homeNeeds(first, input, settled) : [],
    currency: input.shelf.currency,
    pricesInvented: input.shelf.invented,
    tariffPerKWh: input.tariffPerKWh,
    years: input.years,
    members: input.members,
    seed: input.seed,
    work: { ...work, skipped: settled ? work.all - work.solved : 0 },
  };
}

function choiceOf(r: Ranked, input: SearchInput): KitChoice {
  const { state, group, kit } = r;
  const { arrangement, surfaces, moments } = state;
  const { behaviour } = group;
  const probes = [0, arrangement.nightKind ? 2 : 1, arrangement.nightKind ? 3 : 2].flatMap((i) => {
    const t = arrangement.enclosure.thermostats[i];
    return t ? [t.probe] : [];
  });
  const dial = dialCard(surfaces, behaviour, probes);
  const base =
    arrangement.heaterKind === 'heat-mat' ? arrangement.variant.withoutBottomFoam : arrangement.variant.enclosure;
  const enclosure = kitEnclosure(base, kit, { ...dial, restC: restDialC(input.climate) }, arrangement.spot);
  const energies = surfaces.map((s) => yearlyEnergy(s, behaviour, arrangement.enclosure));
  const powers = surfaces.map((s) => kitPowers(s, behaviour));
  const spread = (pick: (i: number) => number): Interval => intervalOf(surfaces.map((_, i) => pick(i)));
  const needs = climateVerdicts(
    enclosure,
    input.climate,
    surfaces.map((s) => judgedMember(s, behaviour, input.climate)),
    moments,
  );
  return {
    id: kit.id,
    name: kitName(kit),
    boxId: arrangement.variant.id,
    changes: arrangement.variant.changes,
    spot: arrangement.spot,
    verdict: r.key.verdict,
    chanceFrac: r.key.chanceFrac,
    weakest: weakestOf(
      group,
      surfaces.map((s) => needMargins(s, behaviour, input.climate)),
      needs,
    ),
    needs,
    fit: kit.fit,
    heart: heartOf(kit),
    parts: kit.parts,
    dial,
    cost: kitCost(kit, energies[0]!, arrangement.enclosure, input),
    kWhPerYear: spread((i) => energies[i]!.kWh),
    kWhPerYearBest: energies[0]!.kWh,
    dayDutyFrac: spread((i) => powers[i]!.dayW / (behaviour.powerW * surfaces[i]!.heaterPower)),
    nightDutyFrac: spread((i) => powers[i]!.nightW / (behaviour.nightPowerW * surfaces[i]!.heaterPower)),
    neededW: spread((i) => neededW(surfaces[i]!, baskingAimC(input.climate))),
    enclosure,
    versions: surfaces.length,
    certain: r.certain,
  };
}

/** Power at which the basking surface is at its aim on the winter day [W]. */
function neededW(surface: Parameters<typeof kitPowers>[0], aimC: number): number {
  const { day } = surface;
  return Math.max(0, day.highW + (aimC - onLine(day, 'basking-surface', day.highW)) / perWatt(day, 'basking-surface'));
}

export const heartOf = ({ heater, nightHeater, thermostat, nightThermostat }: Kit) => ({
  heater,
  nightHeater,
  thermostat,
  nightThermostat,
});

export const kitName = (kit: KitHeart): string =>
  `${kit.heater.name}${kit.nightHeater ? ` with ${kit.nightHeater.name} for the night` : ''} on ${kit.thermostat.name}`;

function weakestOf(
  group: KitGroup,
  margins: readonly (readonly number[])[],
  needs: readonly NeedVerdict[],
): WeakestNeed {
  const tried = Math.max(1, group.tally.tried);
  const middle = kitNeeds.map((_, n) => intervalOf(margins.map((m) => m[n]!)).median);
  let at = 0;
  kitNeeds.forEach((_, n) => {
    const less = group.tally.held[n]! - group.tally.held[at]!;
    if (less < 0 || (less === 0 && middle[n]! < middle[at]!)) at = n;
  });
  const id = kitNeeds[at]!;
  return {
    id,
    title: needs.find((n) => n.id === id)?.title ?? id,
    shareHolding: group.tally.held[at]! / tried,
    margin: middle[at]!,
    unit: id.startsWith('humidity') ? '%' : 'K',
  };
}

interface Cheaper {
  readonly state: ArrangementState;
  readonly group: KitGroup;
  readonly kit: Kit;
  readonly cost: number;
}

/** Kits that would cost less over the years than the first choice, cheapest first, one for each heater and box. */
function cheaper(winner: Ranked, { search }: PreparedSearch): Cheaper[] {
  const found: Cheaper[] = [];
  for (const state of search.states) {
    for (const group of state.groups) {
      const costs = group.kits.map((kit) => state.costs.get(kit.id) ?? Number.POSITIVE_INFINITY);
      const cost = Math.min(...costs);
      if (cost >= winner.key.cost || group === winner.group) continue;
      found.push({ state, group, kit: group.kits[costs.indexOf(cost)]!, cost });
    }
  }
  const seen = new Set<string>();
  return found
    .sort((a, b) => a.cost - b.cost)
    .filter(({ state, kit }) => {
      const heater = `${state.arrangement.variant.id} ${kit.heater.id} ${kit.nightHeater?.id ?? ''}`;
      if (seen.has(heater)) return false;
      seen.add(heater);
      return true;
    });
}

/** A kit that was not tried to the end is spoken of by its best-estimate version, where that shows the miss: a range over a
 *  few versions would look narrower than it is, and how many there are is up to the order in which threads finish. */
function fellOutOf({ state, group, kit, cost }: Cheaper, input: SearchInput): FellOut {
  const { arrangement, surfaces } = state;
  const openIn = (some: readonly MemberSurface[]) =>
    climateVerdicts(
      arrangement.enclosure,
      input.climate,
      some.map((s) => judgedMember(s, group.behaviour, input.climate)),
      state.moments,
    ).filter((n) => n.verdict !== 'holds');
  const inBest = surfaces.length < input.members ? openIn(surfaces.slice(0, 1)) : [];
  const missed = needMargins(surfaces[0]!, group.behaviour, input.climate).map((m, i) => m / (judgedSpread[i] ?? 1));
  const missOf = (n: NeedVerdict) => missed[(kitNeeds as readonly string[]).indexOf(n.id)] ?? 0;
  const bad =
    inBest.length > 0
      ? inBest.sort((a, b) => missOf(a) - missOf(b))[0]
      : openIn(surfaces).sort((a, b) => (a.shareHolding ?? 0) - (b.shareHolding ?? 0))[0];
  return {
    name: kitName(kit),
    heart: heartOf(kit),
    boxId: arrangement.variant.id,
    changes: arrangement.variant.changes,
    spot: arrangement.spot,
    cost,
    verdict: estimateOf(group.tally).verdict,
    why: bad
      ? `${bad.title}: ${bad.found}, wanted ${bad.wanted}.`
      : 'Holds, but its thermostat suits the heater only at a pinch.',
    need: bad ?? null,
    versions: state.surfaces.length,
  };
}

/** The need that the best of the kits fails, or is not sure of. */
function openNeed(first: KitChoice | undefined): NeedVerdict | null {
  if (!first || first.verdict === 'holds') return null;
  const worst = first.needs.find((n) => n.verdict === first.verdict && n.id === first.weakest.id);
  return worst ?? first.needs.find((n) => n.verdict !== 'holds') ?? null;
}

/** The sentence for "no kit holds": the need that fails in the best of them, and why no heater mends it when that is so. */
function noneHolds(first: KitChoice | undefined): string | null {
  if (!first) return 'No heater on the shelf may be used in this box: see what was refused and why.';
  if (first.verdict === 'holds') return null;
  const reasons = openNeed(first)?.reasons ?? [];
  const said = reasons.filter((r) => !r.startsWith('In ')).join(' ');
  const head = first.verdict === 'fails' ? 'No kit of this shelf holds.' : 'No kit of this shelf is sure to hold.';

  return `${head} Nearest: ${first.name}. ${first.weakest.title}: ${said}`;
}

/** What no heater mends: size, lock, hides, water and floor of the home as drawn. */
function homeNeeds(first: KitChoice, input: SearchInput, settled: boolean): NeedVerdict[] {
  const drawn = judgeEnclosure(first.enclosure, input.species, input.standard, input.facts).filter(
    (n) => n.verdict !== 'holds' && n.group !== 'comfort',
  );
  return settled ? [...drawn, ...openSprayNeed(first.enclosure, input)] : drawn;
}
