// The road of boxes: the animal's length over the years against what each box serves, and both roads as tables.
import { neverYears } from '../../planning/stages/growth-forecast.ts';
import type { Road, RoadStage, StageRoads } from '../../planning/stages/stage-road.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { shownFromStored, unitText } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { kitNameText } from './kit-name.ts';
import { LineChart } from './line-chart.tsx';
import { moneyFor } from './money.ts';
import { SortableTable } from './sortable-table.tsx';
import type { ChooseRun } from './use-choose.ts';

interface StagesPartProps {
  readonly run: ChooseRun;
  readonly width: number;
}

export function StagesPart({ run, width }: StagesPartProps) {
  const { t, measure, settings, fromFacts } = useSheet();
  const { roads } = run;
  if (!roads) return null;
  const { growth } = roads;
  const money = moneyFor(measure, roads.currency);
  if (!growth || roads.stepwise.stages.length === 0)
    return (
      <p className="kits-none">
        <RoadNote why={roads.why} />
      </p>
    );
  const length = (m: number) => shownFromStored('length', m, settings);
  const title = roads.atOnce
    ? t('stages.title', { step: money(roads.stepwise.total), once: money(roads.atOnce.total), years: roads.years })
    : t('stages.titleOne', { step: money(roads.stepwise.total), years: roads.years });
  return (
    <>
      <figure className="figure">
        <figcaption className="figure-title" id="stages-title">
          {title}
        </figcaption>
        <LineChart
          lines={[
            {
              id: 'length',
              label: `${t('stages.length')}, ${t('stages.fast')}`,
              points: growth.years.map((y, i) => [y, length(growth.lengthM[i]?.median ?? 0)] as const),
              tone: 'ink',
              band: {
                low: growth.lengthM.map((l) => length(l.low)),
                high: growth.lengthM.map((l) => length(l.high)),
              },
            },
          ]}
          levels={roads.stepwise.stages
            .filter((s) => s.outgrown !== null)
            .map((s) => ({ at: length(s.lengthM.to), label: fromFacts(s.box.name), tone: 'warm' as const }))}
          xLabel={t('cost.x')}
          yLabel={`${t('stages.length')}, ${unitText('length', settings)}`}
          xText={(x) => measure.number(x, 0)}
          yText={(y) => measure.number(y, 0)}
          width={width}
          label={`${title}. ${t('stages.pictureSay')}`}
          fromZero
          wholeX
        />
        <GrowthTable growth={growth} />
        <p className="aside">
          {growth.maturityRead
            ? t('stages.growthRead', { years: measure.number(growth.maturityYears, 1) })
            : t('stages.growthChosen')}
        </p>
      </figure>
      {roads.why && (
        <p>
          <RoadNote why={roads.why} />
        </p>
      )}
      <RoadTable title={t('stages.stepwise')} road={roads.stepwise} currency={roads.currency} id="road-step" />
      {roads.atOnce && (
        <RoadTable title={t('stages.atOnce')} road={roads.atOnce} currency={roads.currency} id="road-once" />
      )}
      {roads.pricesInvented && <p className="aside">{t('choose.invented')}</p>}
    </>
  );
}

/** The curve year by year. */
function GrowthTable({ growth }: { readonly growth: NonNullable<StageRoads['growth']> }) {
  const { t, measure } = useSheet();
  const whole = growth.years.flatMap((year, i) => {
    const lengthM = growth.lengthM[i];
    return year % 1 === 0 && lengthM ? [{ year, lengthM }] : [];
  });
  return (
    <details className="table-behind">
      <summary>{t('table.behind')}</summary>
      <table>
        <caption>{t('stages.length')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('cost.year')}</th>
            {(['slow', 'middle', 'quick'] as const).map((how) => (
              <th key={how} scope="col">
                {t(`stages.${how}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {whole.map(({ year, lengthM }) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              {(['low', 'median', 'high'] as const).map((how) => (
                <td key={how}>{measure.text('length', lengthM[how])}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

interface RoadTableProps {
  readonly title: string;
  readonly road: Road;
  readonly currency: string;
  readonly id: string;
}

/** Why no road leads to the adult box. */
function RoadNote({ why }: { readonly why: StageRoads['why'] }) {
  const { t, measure, fromFacts } = useSheet();
  if (!why) return t('stages.none');
  return t(`stages.why.${why.id}`, {
    standard: fromFacts(why.standardName),
    length: why.adultLengthM === null ? '' : measure.text('length', why.adultLengthM),
  });
}

function RoadTable({ title, road, currency, id }: RoadTableProps) {
  const { t, measure, fromFacts } = useSheet();
  const money = moneyFor(measure, currency);
  const n = (v: number) => measure.number(v, 1);
  const costOf = (s: RoadStage) => s.cost.things + s.cost.energy + s.cost.lamps;
  return (
    <section className="sheet-part" aria-labelledby={id}>
      <h2 id={id}>{`${title}: ${money(road.total)}`}</h2>
      <SortableTable
        caption={title}
        first="years"
        rows={road.stages}
        idOf={(s) => s.box.id}
        columns={[
          {
            key: 'box',
            head: t('stages.box'),
            value: (s) => fromFacts(s.box.name),
            cell: (s) => (
              <>
                {fromFacts(s.box.name)}
                <span className="stage-verdict">
                  <VerdictMark verdict={s.verdict} />
                </span>
              </>
            ),
          },
          {
            key: 'years',
            head: t('stages.years'),
            value: (s) => s.fromYear,
            cell: (s) => `${n(s.fromYear)}–${n(s.toYear)}`,
          },
          {
            key: 'outgrown',
            head: t('stages.outgrown'),
            value: (s) => s.outgrown?.median ?? null,
            cell: (s) =>
              s.outgrown && s.outgrown.median < neverYears
                ? t(s.outgrown.high < neverYears ? 'stages.outgrownSay' : 'stages.outgrownOpen', {
                    median: n(s.outgrown.median),
                    low: n(s.outgrown.low),
                    high: n(s.outgrown.high),
                  })
                : t('stages.forGood'),
          },
          {
            key: 'kit',
            head: t('stages.kit'),
            value: (s) => (s.kit ? kitNameText(s.kit.heart, t, fromFacts) : null),
            cell: (s) => (s.kit ? kitNameText(s.kit.heart, t, fromFacts) : '–'),
          },
          {
            key: 'again',
            head: t('stages.again'),
            value: (s) => s.usedAgain.length,
            cell: (s) => s.usedAgain.map(fromFacts).join(', ') || '–',
          },
          {
            key: 'cost',
            head: t('stages.cost'),
            value: costOf,
            cell: (s) => (
              <>
                {money(costOf(s))}
                {s.coverPrice > 0 && (
                  <span className="kit-change">{t('stages.cover', { price: money(s.coverPrice) })}</span>
                )}
              </>
            ),
            numeric: true,
          },
        ]}
      />
    </section>
  );
}
