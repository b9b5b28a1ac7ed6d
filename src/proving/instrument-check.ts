// Checking an instrument at points that nature holds still: melting ice, and the air above wet salts. What to do step by
// step, what the truth is, and whether the outcome can be used. Leaves out how errors are carried (instrument.ts).
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { carriedErrors, type InstrumentCheck, largestOffset } from './instrument.ts';

export const salts = [
  'magnesium-chloride',
  'potassium-carbonate',
  'sodium-bromide',
  'sodium-chloride',
  'potassium-chloride',
] as const;
export type Salt = (typeof salts)[number];

/** Relative humidity above wet salts at 15, 20 and 25 degC [%]. Source: GREENSPAN1977 as quoted on a maker-neutral table
 *  that was read; the cell of table salt at 20 degC there (75.7) looks like a misprint: 75.5 from memory of the paper. */
const saltPoints: Readonly<Record<Salt, readonly [number, number, number]>> = {
  'magnesium-chloride': [33.3, 33.1, 32.8],
  'potassium-carbonate': [43.1, 43.2, 43.2],
  'sodium-bromide': [60.7, 59.1, 57.6],
  'sodium-chloride': [75.6, 75.5, 75.3],
  'potassium-chloride': [85.9, 85.1, 84.3],
};

/** Humidity above a wet salt [%]. @param tempC 15..25, clipped: outside it the table says nothing */
export function saltRhPct(salt: Salt, tempC: number): number {
  const [low, middle, high] = saltPoints[salt];
  const t = Math.max(15, Math.min(25, tempC));
  return t <= 20 ? low + ((middle - low) * (t - 15)) / 5 : middle + ((high - middle) * (t - 20)) / 5;
}

export type CheckKind = 'ice' | 'salt';

export interface CheckStep {
  readonly id: string;
  readonly say: string;
  /** How long to wait before the next step [min]. */
  readonly waitMin: number;
}

/** What to do, in order. Waiting times: a small bare sensor and a sensor in a case (pages read; home guides say more). */
export function checkSteps(kind: CheckKind, inCase: boolean): readonly CheckStep[] {
  if (kind === 'ice') {
    return [
      {
        id: 'ice-fill',
        say: 'Fill a cup with crushed ice and top it up with cold water until the ice just floats.',
        waitMin: 5,
      },
      {
        id: 'ice-bag',
        say: 'Put the sensor in a thin watertight bag unless it is made for water, press the air out.',
        waitMin: 0,
      },
      {
        id: 'ice-place',
        say: 'Hold the sensor in the middle of the ice, off the bottom and the wall, and stir now and then.',
        waitMin: inCase ? 20 : 5,
      },
      { id: 'ice-read', say: 'Read it three times, a minute apart. The truth is 0.0 °C.', waitMin: 0 },
    ];
  }
  return [
    {
      id: 'salt-mix',
      say: 'Mix the salt with a little water to a wet mush in a small cap; some salt must stay dry-looking on top.',
      waitMin: 0,
    },
    {
      id: 'salt-close',
      say: 'Put cap and sensor in a tight jar or bag. Salt must touch neither the sensor nor an animal.',
      waitMin: inCase ? 60 : 20,
    },
    {
      id: 'salt-steady',
      say: 'Leave it where the temperature does not change, out of the sun; at home rather overnight.',
      waitMin: 0,
    },
    {
      id: 'salt-read',
      say: 'Read humidity and temperature three times, five minutes apart, without opening.',
      waitMin: 0,
    },
  ];
}

export interface CheckOutcome {
  readonly check: InstrumentCheck;
  /** Truth less what was shown; is added to every reading from now on. */
  readonly offset: number;
  /** Error to carry from now on, half-width of 95 %. */
  readonly errorAfter: number;
  readonly notes: readonly string[];
}

/** Finish a check.
 *  @param shown at least two readings at the known point  @param tempC of the jar, for salts
 *  Faults: "CHECK_TOO_FEW", "CHECK_UNSETTLED", "CHECK_BROKEN", "CHECK_JAR_TEMP". */
export function finishCheck(
  kind: CheckKind,
  shown: readonly number[],
  at: { readonly atS: number; readonly salt?: Salt; readonly tempC?: number },
): Result<CheckOutcome> {
  const quantity = kind === 'ice' ? 'tempC' : 'rhPct';
  const unit = kind === 'ice' ? '°C' : '%';
  const faults: Fault[] = [];
  const fault = (code: string, got: string, allowed: string, say: string, fix: string) =>
    faults.push({ code, field: 'shown', got, allowed, say, fix });
  if (shown.length < 2)
    fault(
      'CHECK_TOO_FEW',
      `${shown.length} readings`,
      'at least two',
      'One reading does not show that the sensor has settled.',
      'Read it again a few minutes later.',
    );
  const spread = shown.length === 0 ? 0 : Math.max(...shown) - Math.min(...shown);
  const calm = kind === 'ice' ? 0.3 : 1.5;
  if (spread > calm)
    fault(
      'CHECK_UNSETTLED',
      `${spread.toFixed(1)} ${unit} apart`,
      `at most ${calm} ${unit} apart`,
      'The readings still move.',
      'Wait longer, then read again.',
    );
  const tempC = at.tempC ?? 20;
  if (kind === 'salt' && (at.tempC === undefined || tempC < 10 || tempC > 30))
    faults.push({
      code: 'CHECK_JAR_TEMP',
      field: 'tempC',
      got: String(at.tempC ?? 'nothing'),
      allowed: '10 to 30 °C',
      say: 'The humidity of a salt depends on its temperature.',
      fix: 'Read the temperature in the jar too.',
    });
  const truth = kind === 'ice' ? 0 : saltRhPct(at.salt ?? 'sodium-chloride', tempC);
  const mean = shown.reduce((s, v) => s + v, 0) / Math.max(1, shown.length);
  const offset = truth - mean;
  if (shown.length > 0 && Math.abs(offset) > largestOffset[quantity])
    fault(
      'CHECK_BROKEN',
      `${mean.toFixed(1)} ${unit} where ${truth.toFixed(1)} is true`,
      `within ${largestOffset[quantity]} ${unit}`,
      'The instrument is too far off to be corrected.',
      'Repeat once with fresh ice or salt; if it stays, use another instrument.',
    );
  if (faults.length > 0) return bad(faults);
  const check: InstrumentCheck = { quantity, atS: at.atS, truth, shown: mean, how: kind };
  const notes =
    kind === 'salt' ? ['One point corrects a shift, not a slope: far from it the error may be larger.'] : [];
  return good({ check, offset, errorAfter: carriedErrors[quantity].checked, notes });
}
