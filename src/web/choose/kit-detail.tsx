// One kit in full: parts and prices, where the dials stand and what to expect there, and its needs.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { DialExpectation } from '../../planning/dial/dial-card.ts';
import type { Interval } from '../../planning/plan-answer.ts';
import type { KitChoice } from '../../planning/search/search-answer.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { kitNameText } from './kit-name.ts';
import { moneyFor } from './money.ts';
import { NeedLine } from './need-line.tsx';

interface KitDetailProps {
  readonly choice: KitChoice;
  readonly currency: string;
  readonly climate: ClimateNeeds | null;
  readonly onUse: () => void;
}

export function KitDetail({ choice, currency, climate, onUse }: KitDetailProps) {
  const sheet = useSheet();
  const { t, measure, fromFacts } = sheet;
  const money = moneyFor(measure, currency);
  const { dial } = choice;
  const temp = (v: number) => measure.text('temperature', v);
  const spread = (i: Interval) => measure.span('temperature', i.low, i.high, 1);
  const expect = (e: DialExpectation) =>
    t('kits.expectSay', {
      basking: spread(e.baskingC),
      hide: spread(e.warmHideC ?? e.warmAirC),
      cool: spread(e.coolAirC),
      room: temp(e.roomC),
    });
  const own = dial.probes.find((p) => p.chosen);
  const probe = choice.enclosure.thermostats[0]?.probe;
  const aim = climate ? (climate.baskingSurfaceC.low + climate.baskingSurfaceC.high) / 2 : null;
  return (
    <section className="sheet-part kit-detail" aria-labelledby="kit-detail-title">
      <h2 id="kit-detail-title">{kitNameText(choice.heart, t, fromFacts)}</h2>
      <p>
        <VerdictMark verdict={choice.verdict} />
      </p>
      {choice.fit === 'allowed' && <p className="aside">{t('kits.pinch')}</p>}
      <dl className="figures">
        <div>
          <dt>{t('kits.dialDay')}</dt>
          <dd>{temp(dial.setDayC)}</dd>
        </div>
        <div>
          <dt>{t('kits.dialNight')}</dt>
          <dd>{temp(dial.setNightC)}</dd>
        </div>
        <div>
          <dt>{t('kits.kWh')}</dt>
          <dd>{`${measure.number(choice.kWhPerYear.low, 0)}–${measure.number(choice.kWhPerYear.high, 0)}`}</dd>
        </div>
      </dl>
      {aim !== null && (
        <p>
          {t('kits.dialTrim', {
            set: temp(dial.setDayC),
            low: temp(dial.dayDialC.low),
            high: temp(dial.dayDialC.high),
            aim: temp(aim),
          })}
        </p>
      )}
      <dl className="kit-says">
        <dt>{t('kits.expect')}</dt>
        <dd>{expect(dial.day)}</dd>
        <dt>{t('kits.expectNight')}</dt>
        <dd>{expect(dial.night)}</dd>
        <dt>{t('kits.expectMid')}</dt>
        <dd>{expect(dial.mid)}</dd>
        <dt>{t('kits.expectSummer')}</dt>
        <dd>{expect(dial.summer)}</dd>
        <dt>{t('kits.probe')}</dt>
        <dd>
          {probe?.at === 'mat' || !probe
            ? t('kits.probeMat')
            : t('kits.probeSay', {
                z: measure.text('length', probe.zM),
                width: measure.text('difference', own ? own.dialC.high - own.dialC.low : 0),
              })}
        </dd>
        <dt>{t('kits.guard')}</dt>
        <dd>{guardSay(choice, sheet)}</dd>
        <dt>{t('kits.air')}</dt>
        <dd>
          {choice.changes.length > 0
            ? choice.changes.map((change) => t(`kits.change.${change}`)).join(', ')
            : t('kits.airAsIs')}
        </dd>
      </dl>
      <details className="table-behind" open>
        <summary>{t('kits.parts')}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('kits.part')}</th>
              <th scope="col" className="text-cell">
                {t('kits.for')}
              </th>
              <th scope="col">{t('kits.count')}</th>
              <th scope="col">{t('kits.price')}</th>
            </tr>
          </thead>
          <tbody>
            {choice.parts.map((part, i) => (
              <tr key={`${part.itemId}-${String(i)}`}>
                <th scope="row">{fromFacts(part.name)}</th>
                <td className="text-cell">{t(`kits.role.${part.role}`)}</td>
                <td>{measure.number(part.count, part.count % 1 === 0 ? 0 : 1)}</td>
                <td>{part.owned ? t('kits.owned') : money(part.price)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <ul className="kit-needs">
        {choice.needs
          .filter((need) => need.verdict !== 'holds')
          .map((need) => (
            <li key={need.id}>
              <VerdictMark verdict={need.verdict} /> <NeedLine need={need} />
            </li>
          ))}
      </ul>
      <button type="button" className="solid-button" onClick={onUse}>
        {t('kits.use')}
      </button>
    </section>
  );
}

/** Which guard the heater needs, or why it needs none. */
function guardSay({ parts, enclosure }: KitChoice, { t, fromFacts }: ReturnType<typeof useSheet>): string {
  const guards = parts.filter((part) => part.role === 'guard').map((part) => fromFacts(part.name));
  if (guards.length > 0) return t('kits.guardNeeded', { name: guards.join(', ') });
  return t(enclosure.heaters[0]?.mount === 'above-mesh' ? 'kits.guardAbove' : 'kits.guardMat');
}
