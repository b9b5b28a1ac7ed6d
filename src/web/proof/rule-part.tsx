// What the shop asks of a proof, where each part of it comes from, and a form to set one part for the branch.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { defaultRule, type ProofRule, type RuleSetting, type RuleSettingKey } from '../../proving/verdict/rule.ts';
import type { Asked } from '../animal/animal-api.ts';
import { numberFromText, numberMarks } from '../controls/number-text.ts';
import { dateText } from '../controls/source-note.tsx';
import { setShopValue } from '../reference/reference-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useBegun, useWasBegun } from '../state/begun.ts';
import { Faults } from './faults.tsx';

interface Shown {
  readonly rule: ProofRule;
  readonly settings: readonly RuleSetting[];
}

/** Path, limits as the desk has them, and what one unit of the field is in the rule's own unit. */
const rows: Readonly<
  Record<RuleSettingKey, { readonly path: string; readonly low: number; readonly high: number; readonly per: number }>
> = {
  nights: { path: 'policy.proofNights', low: 1, high: 14, per: 1 },
  longestIntervalS: { path: 'policy.proofLongestIntervalS', low: 1, high: 60, per: 60 },
  longestGapS: { path: 'policy.proofLongestGapS', low: 10, high: 1440, per: 60 },
  handReadingsPerDay: { path: 'policy.proofHandReadingsPerDay', low: 1, high: 12, per: 1 },
};
const keys = Object.keys(rows) as RuleSettingKey[];

const firstChange = { key: 'nights' as RuleSettingKey, value: String(defaultRule.nights), why: '' };

/** A rule in one sentence, and who set what of it. */
export function RuleWords({ rule, settings }: Shown) {
  const { t, measure } = useSheet();
  return (
    <>
      <p className="field-hint">
        {t('proof.ruleSay', {
          nights: rule.nights,
          interval: measure.number(rule.longestIntervalS / 60, 0),
          gap: measure.number(rule.longestGapS / 60, 0),
          hand: rule.handReadingsPerDay,
        })}
      </p>
      {settings.map((s) => (
        <p key={s.key} className="field-hint">
          {t('proof.ruleShop', {
            what: t(`proof.ruleKey.${s.key}`),
            value: measure.number(s.value / rows[s.key].per, 0),
            by: s.by,
            day: dateText(s.at.slice(0, 10), measure.locale),
            why: s.why,
          })}
        </p>
      ))}
      {settings.length < keys.length && <p className="field-hint">{t('proof.ruleOurs')}</p>}
    </>
  );
}

export function RulePart({ shown, onChange }: { readonly shown: Shown; readonly onChange: () => void }) {
  const { t, measure } = useSheet();
  const { now, change, forget } = useBegun('proof-rule', firstChange);
  const { key, value, why } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const { path, low, high, per } = rows[key];
  const choose = (next: RuleSettingKey) => change({ key: next, value: String(shown.rule[next] / rows[next].per) });
  const keep = async () => {
    const sent = await setShopValue(
      path,
      { value: (numberFromText(value, numberMarks(measure.locale)) ?? Number.NaN) * per },
      why,
    );
    setAnswer(sent);
    if (!sent.ok) return;
    forget();
    onChange();
  };
  return (
    <section className="sheet-part" aria-labelledby="rule-title">
      <h2 id="rule-title">{t('proof.rule')}</h2>
      <RuleWords rule={shown.rule} settings={shown.settings} />
      <details open={useWasBegun('proof-rule')}>
        <summary>{t('proof.ruleChange')}</summary>
        <form
          className="check-form"
          onSubmit={(event) => {
            event.preventDefault();
            void keep();
          }}
        >
          <label className="field-label">
            {t('proof.ruleWhat')}
            <select
              className="text-input"
              value={key}
              onChange={(event) => choose(event.target.value as RuleSettingKey)}
            >
              {keys.map((one) => (
                <option key={one} value={one}>
                  {t(`proof.ruleKey.${one}`)}
                </option>
              ))}
            </select>
          </label>
          <label className="field-label">
            {t('proof.ruleValue', { low, high })}
            <input
              inputMode="decimal"
              className="text-input"
              value={value}
              onChange={(event) => change({ value: event.target.value })}
            />
          </label>
          <label className="field-label">
            {t('proof.ruleWhy')}
            <input
              type="text"
              className="text-input"
              value={why}
              onChange={(event) => change({ why: event.target.value })}
            />
          </label>
          <Button className="button" type="submit">
            {t('proof.ruleKeep')}
          </Button>
          <Faults answer={answer} />
        </form>
      </details>
    </section>
  );
}
