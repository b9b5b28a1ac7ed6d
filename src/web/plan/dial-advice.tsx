// Where to set each dial, what to expect when it stands there, and the power it costs.
import { Button } from 'react-aria-components';
import type { PlanAnswer } from '../../planning/plan-answer.ts';
import { sentence } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';

/** A dial is turned in half degrees (our choice). */
const dialStepC = 0.5;
const onDial = (valueC: number): number => Math.round(valueC / dialStepC) * dialStepC;

export function DialAdviceList({ plan }: { readonly plan: PlanAnswer }) {
  const { t, measure } = useSheet();
  const { changeEnclosure, document } = useDocument();
  if (plan.dial.length === 0) return null;
  const thermostats = document.enclosure?.thermostats ?? [];
  /** As the controls beside it call it. */
  const nameOf = (id: string): string => {
    const place = thermostats.findIndex((one) => one.id === id);
    const one = thermostats[place];
    return one === undefined ? '' : `${t(`control.${one.control}`)} ${place + 1}`;
  };
  return (
    <section className="sheet-part" aria-labelledby="dial-title">
      <h2 id="dial-title">{t('dial.title')}</h2>
      {plan.dial.map((dial) => {
        const advisedC = dial.advisedDayC === null ? null : onDial(dial.advisedDayC.median);
        const away = advisedC !== null && Math.abs(advisedC - dial.setDayC) >= dialStepC;
        const said = sentence(dial.told, dial.say, measure);
        return (
          <div key={dial.thermostatId} className="dial-advice">
            {plan.dial.length > 1 && <h3>{nameOf(dial.thermostatId)}</h3>}
            <p lang={said.lang}>{said.text}</p>
            <dl className="figures">
              <div>
                <dt>{t('dial.setDay')}</dt>
                <dd>{measure.text('temperature', dial.setDayC)}</dd>
              </div>
              <div>
                <dt>{t('dial.expectProbe')}</dt>
                <dd>{measure.span('temperature', dial.expectProbeC.low, dial.expectProbeC.high, 1)}</dd>
              </div>
              <div>
                <dt>{t('dial.expectBasking')}</dt>
                <dd>{measure.span('temperature', dial.expectBaskingC.low, dial.expectBaskingC.high, 1)}</dd>
              </div>
            </dl>
            {away && advisedC !== null && (
              <Button
                className="button button-quiet"
                onPress={() =>
                  changeEnclosure((now) => ({
                    ...now,
                    thermostats: now.thermostats.map((row) =>
                      row.id === dial.thermostatId ? { ...row, setDayC: advisedC } : row,
                    ),
                  }))
                }
              >
                {t('dial.use', { value: measure.text('temperature', advisedC) })}
              </Button>
            )}
          </div>
        );
      })}
      <dl className="figures">
        <div>
          <dt>{t('energy.winter')}</dt>
          <dd>{measure.number(plan.kWhPerDayWinter, 2)}&nbsp;kWh</dd>
        </div>
        <div>
          <dt>{t('energy.summer')}</dt>
          <dd>{measure.number(plan.kWhPerDaySummer, 2)}&nbsp;kWh</dd>
        </div>
        <div>
          <dt>{t('energy.year')}</dt>
          <dd>
            {measure.number(plan.kWhPerYear.low, 0)}–{measure.number(plan.kWhPerYear.high, 0)}&nbsp;kWh
          </dd>
        </div>
      </dl>
      <p className="field-hint">
        {t('dial.rangeNote')} {t('energy.note')}
      </p>
    </section>
  );
}
