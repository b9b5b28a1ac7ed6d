// What a shop asks of a proof before it opens the door. No published rule for a home's proof was found; the default is
// our choice, and says so wherever it is shown. A shop sets its own.

export interface ProofRule {
  /** Whole nights that must be covered. */
  readonly nights: number;
  /** Readings of a logger no sparser than this [s]. */
  readonly longestIntervalS: number;
  /** No hole longer than this [s]. */
  readonly longestGapS: number;
  /** Hand readings: at least so many a day, in as many of morning, afternoon and evening. */
  readonly handReadingsPerDay: number;
  /** Whether humidity must be read and held too. */
  readonly humidity: boolean;
  /** Whether the year's coldest night and hottest day must be forecast to hold. */
  readonly forecast: boolean;
}

export type RuleSettingKey = 'nights' | 'longestIntervalS' | 'longestGapS' | 'handReadingsPerDay';

/** One part of the rule that the shop set itself. */
export interface RuleSetting {
  readonly key: RuleSettingKey;
  readonly value: number;
  readonly by: string;
  /** ISO time. */
  readonly at: string;
  readonly why: string;
}

export const defaultRule: ProofRule = {
  nights: 3,
  longestIntervalS: 600,
  longestGapS: 3600,
  handReadingsPerDay: 3,
  humidity: false,
  forecast: true,
};

export const ruleBasis =
  'Our choice: three nights, readings every ten minutes or three by hand a day, every need held with its instrument error. No published rule for proving a home was found; pages for keepers say "a couple of days".';

/** What a rule rests on: our choice, or the shop with who, when and why. */
export const basisOf = (settings: readonly RuleSetting[]): string =>
  settings.length === 0
    ? ruleBasis
    : `The shop's own rule: ${settings.map((s) => `${s.key} ${s.value} (${s.by}, ${s.at.slice(0, 10)}: ${s.why})`).join('; ')}. What the shop has not set is our choice.`;
