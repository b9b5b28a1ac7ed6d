// Choose it, cost it, break it: kits for the home as planned, what can go wrong in it, and the boxes of the coming years.
import './choose.css';
import { useCallback, useMemo, useState } from 'react';
import type { KitChoice } from '../../planning/search/search-answer.ts';
import { usualTariff, usualYears } from '../../planning/search/search-input.ts';
import type { Fault } from '../../shared/fault.ts';
import { useAsked } from '../animal/use-asked.ts';
import { Choice } from '../controls/choice.tsx';
import { FaultText } from '../controls/fault-text.tsx';
import { OwnValuesUsed } from '../controls/own-values-used.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useWidth } from '../settings/use-width.ts';
import { readShelf } from '../shelf/shelf-api.ts';
import { go } from '../shell/router.ts';
import { useBegun } from '../state/begun.ts';
import { useDocument } from '../state/document-context.tsx';
import { useShopValues } from '../state/shop-values.ts';
import { namedStandard } from '../state/standard.ts';
import { useFacts } from '../worker/use-facts.ts';
import type { ChooseAsk } from './choose-protocol.ts';
import { CostSettings } from './cost-settings.tsx';
import { FaultsPart } from './faults-part.tsx';
import { KitsPart } from './kits-part.tsx';
import { StagesPart } from './stages-part.tsx';
import { type ChoosePart, useChoose } from './use-choose.ts';

/** Space left and right of the sheet together, as in choose.css [px]. */
const sidePadding = 32;

const usualMoney = {
  tariffPerKWh: usualTariff.perKWh as number,
  years: usualYears,
  drawnIsOwned: false,
  ownedIds: [] as readonly string[],
};

export function ChoosePage() {
  const { t } = useSheet();
  const { enclosure, document, savedAs, changeEnclosure } = useDocument();
  const [part, setPart] = useState<ChoosePart>('search');
  // What one customer has is not what the next one has: kept with the enquiry that the shop computer knows.
  const money = useBegun(savedAs && `choose-${savedAs.id}`, usualMoney);
  const { tariffPerKWh, years, drawnIsOwned, ownedIds } = money.now;
  const own = useShopValues();
  const standardId = namedStandard(document.answers);
  const shopValues = own?.values ?? null;
  const shop = useAsked('shelf', readShelf);
  // a shop computer that is not reached leaves the starter shelf
  const waiting = shop.value === null && !shop.failed;
  const shelf = shop.value?.shelf ?? null;
  const ask = useMemo<ChooseAsk | null>(
    () =>
      enclosure && shopValues && !waiting
        ? { enclosure, standardId, shopValues, tariffPerKWh, years, drawnIsOwned, shelf, ownedIds }
        : null,
    [enclosure, standardId, shopValues, tariffPerKWh, years, drawnIsOwned, shelf, ownedIds, waiting],
  );
  const { run, stop } = useChoose(part, ask);
  const [ref, outerWidth] = useWidth<HTMLDivElement>(800);
  const width = outerWidth - sidePadding;
  const facts = useFacts();
  const animal = enclosure?.animal;
  const climate = animal
    ? (facts?.species.find((s) => s.id === animal.speciesId)?.climate[animal.stage] ?? null)
    : null;
  const plan = savedAs ? `/plan/${savedAs.id}` : '/plan';
  const use = useCallback(
    (choice: KitChoice) => {
      changeEnclosure(() => choice.enclosure);
      go(plan);
    },
    [changeEnclosure, plan],
  );
  if (!enclosure) return null;
  return (
    <main className="choose" ref={ref}>
      <p className="plan-what">
        <a
          href={plan}
          onClick={(event) => {
            event.preventDefault();
            go(plan);
          }}
        >
          {t('choose.back')}
        </a>
      </p>
      <h1>{t('choose.title')}</h1>
      <Choice
        label={t('choose.part')}
        hideLabel
        value={part}
        onChange={setPart}
        options={(['search', 'faults', 'stages'] as const).map((value) => ({ value, text: t(`choose.part.${value}`) }))}
      />
      {part !== 'faults' && (
        <CostSettings
          {...{ tariffPerKWh, years, drawnIsOwned, shelf, ownedIds }}
          onOwnedIds={(next) => money.change({ ownedIds: next })}
          onTariff={(next) => money.change({ tariffPerKWh: next })}
          onYears={(next) => money.change({ years: next })}
          onOwned={(next) => money.change({ drawnIsOwned: next })}
        />
      )}
      <Working part={part} run={run} onStop={stop} />
      {run.failed !== null && (
        <p role="alert" className="kits-none">
          {t('choose.failed')}
        </p>
      )}
      {run.faults.map((fault) => (
        <Refused key={`${fault.code}${fault.field}`} fault={fault} />
      ))}
      {part === 'search' && (
        <KitsPart answer={run.answer} helps={run.helps} width={width} climate={climate} onUse={use} />
      )}
      <OwnValuesUsed used={run.used} />
      {part === 'faults' && <FaultsPart run={run} width={width} />}
      {part === 'stages' && <StagesPart run={run} width={width} />}
    </main>
  );
}

interface WorkingProps {
  readonly part: ChoosePart;
  readonly run: ReturnType<typeof useChoose>['run'];
  readonly onStop: () => void;
}

/** How far it is, and the way to stop it. */
function Working({ part, run, onStop }: WorkingProps) {
  const { t, measure } = useSheet();
  const words =
    part === 'search'
      ? t('choose.working', { done: measure.text('percent', run.doneFrac * 100) })
      : part === 'faults'
        ? t('choose.workingFaults', { done: run.findings.length + 1 })
        : t('choose.workingRoads');
  return (
    <div className="choose-working" role="status">
      {run.working && (
        <>
          <span>{words}</span>
          {part === 'search' && <progress max={1} value={run.doneFrac} aria-label={words} />}
          <button type="button" className="quiet-button" onClick={onStop}>
            {t('choose.stop')}
          </button>
        </>
      )}
    </div>
  );
}

function Refused({ fault }: { readonly fault: Fault }) {
  return (
    <p role="alert" className="kits-none">
      <FaultText fault={fault} />
    </p>
  );
}
