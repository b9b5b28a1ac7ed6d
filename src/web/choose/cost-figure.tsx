// What each kit has cost by the end of each year, with the changes of lamps marked on the chosen one, and its table.

import type { KitChoice } from '../../planning/search/search-answer.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { kitNameText } from './kit-name.ts';
import { type ChartLine, type ChartMark, LineChart } from './line-chart.tsx';
import { moneyFor } from './money.ts';

interface CostFigureProps {
  readonly choices: readonly KitChoice[];
  readonly chosen: KitChoice;
  readonly currency: string;
  readonly width: number;
}

/** Spent by the end of each year; year 0 = what is bought now. */
function spent(choice: KitChoice): (readonly [number, number])[] {
  let sum = choice.cost.kit;
  return [
    [0, sum],
    ...choice.cost.byYear.map((y) => {
      sum += y.lamps + y.energy;
      return [y.year, sum] as const;
    }),
  ];
}

const dashes = [undefined, '7 4', '2 3', '10 3 2 3', '4 4', '1 4'] as const;

export function CostFigure({ choices, chosen, currency, width }: CostFigureProps) {
  const { t, measure, fromFacts } = useSheet();
  const money = moneyFor(measure, currency);
  const lines = choices.map((choice, i): ChartLine => {
    const dash = dashes[i % dashes.length];
    return {
      id: choice.id,
      label: kitNameText(choice.heart, t, fromFacts),
      points: spent(choice),
      tone: choice.id === chosen.id ? 'warm' : 'soft',
      ...(dash ? { dash } : {}),
    };
  });
  const own = spent(chosen);
  const marks = chosen.cost.byYear
    .filter((y) => y.replaced.length > 0)
    .map((y): ChartMark => ({ x: y.year, y: own[y.year]?.[1] ?? 0, label: `${y.replaced.length} ×` }));
  const title = t('cost.title', {
    years: chosen.cost.years,
    name: kitNameText(chosen.heart, t, fromFacts),
    cost: money(chosen.cost.total),
  });
  return (
    <figure className="figure">
      <figcaption className="figure-title" id="cost-title">
        {title}
      </figcaption>
      <LineChart
        lines={lines}
        marks={marks}
        xLabel={t('cost.x')}
        yLabel={t('cost.y')}
        xText={(x) => measure.number(x, 0)}
        yText={(y) => money(y)}
        width={width}
        label={title}
        fromZero
        wholeX
      />
      <details className="table-behind">
        <summary>{t('table.behind')}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('cost.year')}</th>
              <th scope="col">{t('kits.kit')}</th>
              <th scope="col">{t('kits.lamps')}</th>
              <th scope="col">{t('kits.energy')}</th>
              <th scope="col">{t('cost.replaced')}</th>
            </tr>
          </thead>
          <tbody>
            {chosen.cost.byYear.map((y) => (
              <tr key={y.year}>
                <th scope="row">{y.year}</th>
                <td>{money(y.kit)}</td>
                <td>{money(y.lamps)}</td>
                <td>{money(y.energy)}</td>
                <td>{y.replaced.length > 0 ? counted(y.replaced.map(fromFacts)) : '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <SpentTable choices={choices} money={money} />
      </details>
    </figure>
  );
}

/** The lines of the picture: what each kit has cost by the end of each year. */
function SpentTable({ choices, money }: Pick<CostFigureProps, 'choices'> & { readonly money: (v: number) => string }) {
  const { t, fromFacts } = useSheet();
  const years = choices[0]?.cost.byYear.map((y) => y.year) ?? [];
  return (
    <div className="sort-scroll">
      <table>
        <caption>{t('cost.byYear')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('cost.year')}</th>
            {[0, ...years].map((year) => (
              <th key={year} scope="col">
                {year}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {choices.map((choice) => (
            <tr key={choice.id}>
              <th scope="row">{kitNameText(choice.heart, t, fromFacts)}</th>
              {spent(choice).map(([year, sum]) => (
                <td key={year}>{money(sum)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** "4 × Basking lamp 60 W" */
function counted(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, n]) => `${n} × ${name}`).join(', ');
}
