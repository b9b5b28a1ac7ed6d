// Kits in order: the picture and its table, the chosen one in full, its cost over the years, and why others fell out.
import { memo, useState } from 'react';
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { further } from '../../planning/kit/heater-spot.ts';
import type { KitChoice, SearchAnswer } from '../../planning/search/search-answer.ts';
import type { HelpingChange } from '../../planning/search/what-helps.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { fellOutText, noneTexts, refusalText, weakestTitle } from '../messages/kit-words.ts';
import type { NeedSentence } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { CostFigure } from './cost-figure.tsx';
import { HelpsList } from './helps-list.tsx';
import { KitBars } from './kit-bars.tsx';
import { KitDetail } from './kit-detail.tsx';
import { kitNameText } from './kit-name.ts';
import { moneyFor } from './money.ts';
import { NeedLine } from './need-line.tsx';
import { SortableTable, type SortColumn } from './sortable-table.tsx';

interface KitsPartProps {
  readonly answer: SearchAnswer | null;
  readonly helps: readonly HelpingChange[] | null;
  readonly width: number;
  readonly climate: ClimateNeeds | null;
  readonly onUse: (choice: KitChoice) => void;
}

/** Drawn anew only when the answer is another one, not with every step of the progress. */
export const KitsPart = memo(function KitsPart({ answer, helps, width, climate, onUse }: KitsPartProps) {
  const sheet = useSheet();
  const { t, measure, fromFacts } = sheet;
  const [picked, setPicked] = useState<string | null>(null);
  if (!answer) return null;
  const money = moneyFor(measure, answer.currency);
  const chosen = answer.choices.find((c) => c.id === picked) ?? answer.choices[0] ?? null;
  const columns: readonly SortColumn<KitChoice>[] = [
    {
      key: 'name',
      head: t('kits.name'),
      value: (c) => kitNameText(c.heart, t, fromFacts),
      cell: (c) => <KitName choice={c} />,
    },
    {
      key: 'verdict',
      head: t('kits.verdict'),
      value: (c) => ({ holds: 0, 'not-known': 1, fails: 2 })[c.verdict],
      cell: (c) => <VerdictMark verdict={c.verdict} />,
    },
    {
      key: 'chance',
      head: t('kits.chance'),
      value: (c) => -c.chanceFrac,
      cell: (c) => measure.text('percent', c.chanceFrac * 100),
      numeric: true,
    },
    {
      key: 'weakest',
      head: t('kits.weakest'),
      value: (c) => c.weakest.shareHolding,
      cell: (c) => (
        <span lang={weakestTitle(c.weakest, measure).lang}>
          {weakestTitle(c.weakest, measure).text}
          {` (${measure.text(c.weakest.unit === 'K' ? 'difference' : 'percent', c.weakest.margin, 1)})`}
        </span>
      ),
    },
    { key: 'kit', head: t('kits.kit'), value: (c) => c.cost.kit, cell: (c) => money(c.cost.kit), numeric: true },
    {
      key: 'kWh',
      head: t('kits.kWh'),
      value: (c) => c.kWhPerYear.median,
      cell: (c) => measure.number(c.kWhPerYear.median, 0),
      numeric: true,
    },
    { key: 'cost', head: t('kits.cost'), value: (c) => c.cost.total, cell: (c) => money(c.cost.total), numeric: true },
  ];
  return (
    <>
      <figure className="figure">
        <figcaption className="figure-title choose-figure-title" id="kits-title">
          {titleOf(answer, sheet, money)}
        </figcaption>
        <NoneHolds answer={answer} />
        {answer.choices.length > 0 && (
          <>
            <KitBars
              choices={answer.choices}
              currency={answer.currency}
              width={width}
              chosen={chosen?.id ?? null}
              label={`${titleOf(answer, sheet, money)}. ${t('kits.pictureSay')}`}
            />
            <SortableTable
              caption={t('kits.pictureSay')}
              columns={columns}
              rows={answer.choices}
              idOf={(c) => c.id}
              first="verdict"
              chosen={chosen?.id ?? null}
              onChoose={setPicked}
            />
            <p className="aside">
              {t('kits.chanceNote')} {t('kits.weakestNote')} {answer.pricesInvented && t('choose.invented')}
            </p>
          </>
        )}
      </figure>
      {helps && helps.length > 0 && <HelpsList helps={helps} currency={answer.currency} />}
      {chosen && <KitDetail choice={chosen} currency={answer.currency} climate={climate} onUse={() => onUse(chosen)} />}
      {chosen && <CostFigure choices={answer.choices} chosen={chosen} currency={answer.currency} width={width} />}
      <Others answer={answer} />
    </>
  );
});

function titleOf(
  answer: SearchAnswer,
  { t, fromFacts }: ReturnType<typeof useSheet>,
  money: (v: number) => string,
): string {
  const first = answer.choices[0];
  if (!answer.settled && first) return t('kits.titleFirst', { name: kitNameText(first.heart, t, fromFacts) });
  const holding = answer.choices.filter((c) => c.verdict === 'holds').length;
  if (!first || holding === 0) return t('kits.titleNone');
  const blanks = { count: holding, cost: money(first.cost.total), years: answer.years };
  if (holding === 1) return t('kits.titleOne', { cost: blanks.cost, years: blanks.years });
  return t('kits.title', blanks);
}

export function KitName({ choice }: { readonly choice: Pick<KitChoice, 'heart' | 'changes' | 'spot'> }) {
  const { t, fromFacts, measure } = useSheet();
  const beside = [
    ...(choice.spot === 'usual'
      ? []
      : [t(`kits.spot.${choice.spot}`, { by: measure.text('length', further.lowerM, 0) })]),
    ...choice.changes.map((c) => t(`kits.change.${c}`)),
  ];
  return (
    <>
      <span>{kitNameText(choice.heart, t, fromFacts)}</span>
      {beside.length > 0 && <span className="kit-change">{beside.join(', ')}</span>}
    </>
  );
}

/** Why no kit holds, where none does. */
function NoneHolds({ answer }: { readonly answer: SearchAnswer }) {
  const { t, measure } = useSheet();
  const said = noneTexts(answer, measure, t);
  if (said.length === 0) return null;
  return (
    <p className="kits-none">
      {said.map((one, i) => (
        <span key={one.text} lang={one.lang}>
          {i > 0 && ' '}
          {one.text}
        </span>
      ))}
    </p>
  );
}

const Said = ({ text, lang }: NeedSentence) => <span lang={lang}>{text}</span>;

/** Cheaper kits and why not; what the rules refuse; what no heater mends. */
function Others({ answer }: { readonly answer: SearchAnswer }) {
  const { t, measure, fromFacts } = useSheet();
  const money = moneyFor(measure, answer.currency);
  return (
    <>
      {answer.homeNeeds.length > 0 && (
        <section className="sheet-part" aria-labelledby="home-title">
          <h2 id="home-title">{t('kits.home')}</h2>
          <ul className="kit-needs">
            {answer.homeNeeds.map((need) => (
              <li key={need.id}>
                <VerdictMark verdict={need.verdict} /> <NeedLine need={need} brief />
              </li>
            ))}
          </ul>
        </section>
      )}
      {answer.fellOut.length > 0 && (
        <section className="sheet-part" aria-labelledby="fell-title">
          <h2 id="fell-title">{t('kits.fellOut')}</h2>
          <SortableTable
            caption={t('kits.fellOut')}
            first="cost"
            rows={answer.fellOut}
            idOf={(f) => `${f.boxId}${f.name}${f.spot}`}
            columns={[
              {
                key: 'name',
                head: t('kits.name'),
                value: (f) => kitNameText(f.heart, t, fromFacts),
                cell: (f) => <KitName choice={f} />,
              },
              { key: 'cost', head: t('kits.cost'), value: (f) => f.cost, cell: (f) => money(f.cost), numeric: true },
              {
                key: 'why',
                head: t('kits.fellOutWhy'),
                value: (f) => fellOutText(f, measure, t).text,
                cell: (f) => <Said {...fellOutText(f, measure, t)} />,
              },
            ]}
          />
        </section>
      )}
      {answer.refusals.length > 0 && (
        <section className="sheet-part" aria-labelledby="refused-title">
          <h2 id="refused-title">{t('kits.refused')}</h2>
          <SortableTable
            caption={t('kits.refused')}
            first="count"
            rows={answer.refusals}
            idOf={(r) => r.why}
            columns={[
              {
                key: 'why',
                head: t('kits.refusedWhy'),
                value: (r) => refusalText(r, measure).text,
                cell: (r) => <Said {...refusalText(r, measure)} />,
              },
              {
                key: 'count',
                head: t('kits.refusedCount'),
                value: (r) => -r.kits,
                cell: (r) => measure.number(r.kits, 0),
                numeric: true,
              },
            ]}
          />
        </section>
      )}
      <p className="aside">
        {t('kits.work', { kits: answer.kitsTried, solved: answer.work.solved, all: answer.work.all })}
      </p>
    </>
  );
}
