// What would help where no kit holds: each change with its verdict and what it costs to buy.
import type { HelpStep } from '../../planning/search/help-changes.ts';
import type { HelpingChange } from '../../planning/search/what-helps.ts';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { kitNameText } from './kit-name.ts';
import { moneyFor } from './money.ts';
import { SortableTable } from './sortable-table.tsx';

/** So many are shown, best first; our choice. */
const shownHelps = 5;

export function HelpsList({
  helps,
  currency,
}: {
  readonly helps: readonly HelpingChange[];
  readonly currency: string;
}) {
  const sheet = useSheet();
  const { t, measure } = sheet;
  const money = moneyFor(measure, currency);
  return (
    <section className="sheet-part" aria-labelledby="helps-title">
      <h2 id="helps-title">{t('kits.helps')}</h2>
      <p className="aside">{t('kits.helpNote')}</p>
      <SortableTable
        caption={t('kits.helps')}
        first="order"
        rows={helps.slice(0, shownHelps)}
        idOf={(help) => JSON.stringify(help.steps)}
        columns={[
          {
            key: 'change',
            head: t('kits.helpChange'),
            value: (help) => stepsText(help.steps, sheet),
            cell: (help) => stepsText(help.steps, sheet),
          },
          {
            key: 'order',
            head: t('kits.verdict'),
            value: (help) => helps.indexOf(help),
            cell: (help) => (
              <>
                <VerdictMark verdict={help.verdict} />
                {help.stillOpen.length > 0 && (
                  <span className="kit-change">{t('kits.helpOpen', { count: help.stillOpen.length })}</span>
                )}
              </>
            ),
          },
          {
            key: 'cost',
            head: t('kits.helpBuy'),
            value: (help) => help.cost,
            cell: (help) => (help.cost === null ? t('kits.helpNoPrice') : money(help.cost)),
            numeric: true,
          },
        ]}
      />
    </section>
  );
}

/** What is done, in words. */
function stepsText(steps: readonly HelpStep[], { t, measure, fromFacts }: ReturnType<typeof useSheet>): string {
  const blanksOf = (step: HelpStep): Record<string, string> => {
    switch (step.id) {
      case 'box':
        return { name: fromFacts(step.name) };
      case 'box-and-kit':
        return { name: fromFacts(step.name), kit: kitNameText(step.heart, t, fromFacts) };
      case 'damp-floor':
        return { share: measure.text('percent', step.shareFrac * 100, 0) };
      case 'warmer-winter':
      case 'cooler-summer':
        return {
          by: measure.text('difference', step.byK, 0),
          low: measure.text('temperature', step.lowC, 0),
          high: measure.text('temperature', step.highC, 0),
        };
      default:
        return {};
    }
  };
  return steps.map((step) => t(`kits.help.${step.id}`, blanksOf(step))).join(` ${t('kits.helpAnd')} `);
}
