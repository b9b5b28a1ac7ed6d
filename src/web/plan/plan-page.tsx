// The plan: the home drawn to scale and its day beside the verdict on every need; everything follows the hand.
import { useCallback, useMemo, useState } from 'react';
import { FaultText } from '../controls/fault-text.tsx';
import { OwnValuesUsed } from '../controls/own-values-used.tsx';
import { boxName } from '../enquiry/box-name.ts';
import { movedHeater, movedProbe } from '../pictures/move.ts';
import type { SectionMoves } from '../pictures/section-handles.tsx';
import { wantedClimate } from '../pictures/wanted.ts';
import { ProofLink } from '../proof/proof-link.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { useMedia, useViewHeight, useWidth } from '../settings/use-width.ts';
import { useSayPlanMissing } from '../shell/plan-missing.ts';
import { go } from '../shell/router.ts';
import { useDocument } from '../state/document-context.tsx';
import { namedStandard } from '../state/standard.ts';
import { useFacts } from '../worker/use-facts.ts';
import { usePlan } from '../worker/use-plan.ts';
import { useSteady } from '../worker/use-steady.ts';
import { BoxControls } from './box-controls.tsx';
import { Cautions } from './cautions.tsx';
import { DialAdviceList } from './dial-advice.tsx';
import { FloorFigure, MapFigure, SectionFigure } from './figures.tsx';
import { Headline } from './headline.tsx';
import { KeepVerdict } from './keep-verdict.tsx';
import { KeyNumbers } from './key-numbers.tsx';
import { conditionsAt, firstMoment, type Moment } from './moment.ts';
import { MomentChoice } from './moment-choice.tsx';
import { HeldNeeds, OpenNeeds } from './needs-list.tsx';
import { nextOnPlan } from './next-on-plan.ts';
import { PrintPlan } from './print-plan.tsx';
import { StandardChoice } from './standard-choice.tsx';
import { HeaterControls, RoomControls, ThermostatControls } from './try-controls.tsx';
import { TurnedPart } from './turned-part.tsx';
import { useReadings } from './use-readings.ts';
import { useWarmSearch } from './use-warm-search.ts';

/** Shares of the window's height that the drawing and the map take on a wide screen, so that both are seen at once. */
const heights = {
  section: 0.285,
  sectionLeast: 210,
  map: 0.2,
  mapLeast: 150,
  narrowSection: 250,
  narrowMap: 250,
} as const;

export function PlanPage() {
  const { t, settings } = useSheet();
  const { document, enclosure, changeEnclosure, savedAs } = useDocument();
  const chooseAt = savedAs ? `/choose/${savedAs.id}` : '/choose';
  const facts = useFacts();
  const [moment, setMoment] = useState<Moment>(firstMoment);
  const conditions = useMemo(() => (enclosure ? conditionsAt(moment, enclosure) : null), [moment, enclosure]);
  const steady = useSteady(enclosure, conditions);
  const run = usePlan(enclosure, namedStandard(document.answers));
  const readings = useReadings(enclosure, moment, steady, run);
  const species = facts?.species.find((row) => row.id === enclosure?.animal?.speciesId) ?? null;
  const stage = enclosure?.animal?.stage;
  const climateNeeds = species && stage ? species.climate[stage] : null;
  const climate = useMemo(() => (climateNeeds ? wantedClimate(climateNeeds) : null), [climateNeeds]);
  const [ref, width] = useWidth<HTMLDivElement>(700);
  const wide = useMedia('(min-width: 1024px)');
  const viewHeight = useViewHeight();
  const moves = useMemo<SectionMoves>(
    () => ({
      heater: (index, to) => changeEnclosure((now) => movedHeater(now, index, to), `move-heater-${index}`),
      probe: (index, to) => changeEnclosure((now) => movedProbe(now, index, to), `move-probe-${index}`),
    }),
    [changeEnclosure],
  );
  const onHour = useCallback((hour: number) => setMoment((now) => ({ ...now, at: hour })), []);
  const next = nextOnPlan(run, settings.language, t);
  useSayPlanMissing(next);
  useWarmSearch(run.working || run.forEnclosure !== enclosure ? null : enclosure, namedStandard(document.answers));
  if (!enclosure) return null;

  const { plan } = run;
  const day = run.days?.[moment.season] ?? null;
  const stale = run.forEnclosure !== enclosure || run.working;
  const openCount = plan?.needs.filter((need) => need.verdict !== 'holds').length ?? 0;
  const figure = { enclosure, climate, width };
  const map = day && (
    <MapFigure
      lengthM={enclosure.box.lengthM}
      period={enclosure.day}
      climate={climate}
      width={width}
      day={day}
      season={moment.season}
      hour={typeof moment.at === 'number' ? moment.at : null}
      onHour={onHour}
      stale={run.daysFor !== enclosure}
      mapHeight={wide ? Math.max(heights.mapLeast, viewHeight * heights.map) : heights.narrowMap}
    />
  );
  const floor = <FloorFigure {...figure} readings={readings} moves={moves} mostInsideHeight={200} />;

  return (
    <main className="board plan">
      <div className="board-drawing" ref={ref}>
        <MomentChoice moment={moment} onChange={setMoment} />
        <SectionFigure
          {...figure}
          readings={readings}
          moves={moves}
          mostInsideHeight={wide ? Math.max(heights.sectionLeast, viewHeight * heights.section) : heights.narrowSection}
        />
        {wide && map}
        {wide && floor}
      </div>
      {!wide && <KeyNumbers readings={readings} climate={climate} />}
      <div className="board-sheet">
        <p className="plan-what">
          <span>
            {t('plan.what', {
              animal: species?.commonName ?? enclosure.animal?.speciesId ?? '',
              stage: stage ? t(`stage.${stage}`) : '',
              box: document.answers.startFrom ? boxName(document.answers.startFrom, t) : enclosure.name,
            })}
          </span>
          <a
            href="/"
            onClick={(event) => {
              event.preventDefault();
              go('/');
            }}
          >
            {t('plan.changeAnswers')}
          </a>
          <a
            href={chooseAt}
            onClick={(event) => {
              event.preventDefault();
              go(chooseAt);
            }}
          >
            {t('choose.link')}
          </a>
        </p>
        <Headline run={run} stale={stale} next={next} />
        {plan && !stale && <KeepVerdict enclosure={enclosure} />}
        <ProofLink />
        {plan && !stale && <PrintPlan />}
        {plan && openCount > 0 && <OpenNeeds needs={plan.needs} facts={facts} />}
        {!wide && map}
        <section className="sheet-part try" aria-labelledby="try-title">
          <h2 id="try-title">{t('try.title')}</h2>
          <RoomControls season={moment.season} />
          <BoxControls enclosure={enclosure} />
          <HeaterControls enclosure={enclosure} />
          <ThermostatControls enclosure={enclosure} />
          <StandardChoice facts={facts} />
        </section>
        {!wide && floor}
        <TurnedPart enclosure={enclosure} climate={climate} readings={readings} />
        {plan && <DialAdviceList plan={plan} />}
        {plan && plan.needs.length > openCount && (
          <section className="sheet-part" aria-labelledby="held-title">
            <h2 id="held-title">{t('plan.held', { count: plan.needs.length - openCount })}</h2>
            <HeldNeeds needs={plan.needs} facts={facts} />
          </section>
        )}
        <OwnValuesUsed used={run.used} />
        <Cautions facts={facts} />
        <section className="sheet-part model-note" aria-labelledby="model-title">
          <h2 id="model-title">{t('model.title')}</h2>
          <p>{t('model.say')}</p>
          {plan?.notes.map((note) => (
            <p key={`${note.code}${note.field}`}>
              <FaultText fault={note} />
            </p>
          ))}
        </section>
      </div>
    </main>
  );
}
