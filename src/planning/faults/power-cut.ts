// The card for a power cut: how long the box keeps warm on the coldest night, and what to do meanwhile.
// The steps are common practice in our own words; they defer to fire service and vet where it matters.
import { coded, type Saying, told } from '../../husbandry/coded.ts';
import type { FaultFinding, PowerCutCard } from './fault-answer.ts';
import type { RehearseInput } from './rehearse.ts';

const hoursShown = [1, 3, 6, 12, 24] as const;

const say = coded('power-cut', {
  shut: 'Keep the box shut. Look in once an hour, no more.',
  blankets:
    'Hang blankets over all sides with the heaters switched off at the plug; leave a slit low and high for air.',
  warmRoom: 'Move the box, or the animal in a cloth bag inside a lidded box, to the warmest room of the house.',
  bottles:
    'Bottles of hand-warm water, wrapped in a towel, beside the bag and never under it: warm to the wrist, not hot.',
  noFlame: 'No candles, no gas heaters, nothing that burns, beside or in the box.',
  after: 'When power is back, warm up at the usual dial and feed nothing for two days.',
  vet: 'A limp animal, or one that does not right itself when turned: a vet at once.',
});

/** Steps in the order in which they help. */
const steps: readonly Saying[] = Object.values(say);
export const powerCutSteps: readonly string[] = steps.map((step) => step.en);

export function powerCutCard(input: RehearseInput, findings: readonly FaultFinding[]): PowerCutCard {
  const cut = findings.find((f) => f.id === 'H20');
  const crossing = cut?.crossings.find((c) => c.line.kind === 'too-cold');
  const guard = cut?.guards.find((g) => g.guard === 'insulation');
  return {
    roomC: input.enclosure.room.winter.lowC,
    hoursToLine: crossing?.hours ?? null,
    shareFrac: crossing?.shareFrac ?? 0,
    after: hoursShown.flatMap((hours) => {
      const row = cut?.rows.find((r) => r.hour >= hours - 1e-6);
      return row ? [{ hours, warmestC: row.warmestC, coolestC: row.coolestC }] : [];
    }),
    insulationHours: guard?.hours ?? null,
    steps: powerCutSteps,
    toldSteps: steps.map(told),
  };
}
