// The plan: the home drawn to scale and its day beside the verdict on every need; everything follows the hand.
import { useCallback, useMemo, useState } from 'react';
import { Choice } from '../controls/choice.tsx';
import { VerdictMark } from '../controls/verdict-mark.tsx';
import { boxName } from '../enquiry/box-name.ts';
import { movedHeater, movedProbe } from '../pictures/move.ts';
import type { SectionMoves } from '../pictures/section-handles.tsx';
import { wantedClimate } from '../pictures/wanted.ts';
import { proseInUnits } from '../settings/prose-units.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useMedia, useWidth } from '../settings/use-width.ts';
import { useSayPlanMissing } from '../shell/plan-missing.ts';
import { go } from '../shell/router.ts';
import { useDocument } from '../state/document-context.tsx';
import { useFacts } from '../worker/use-facts.ts';
import { usePlan } from '../worker/use-plan.ts';
import { useSteady } from '../worker/use-steady.ts';
import { Cautions } from './cautions.tsx';
import { DialAdviceList } from './dial-advice.tsx';
import { FloorFigure, MapFigure, SectionFigure } from './figures.tsx';
import { KeyNumbers } from './key-numbers.tsx';
import { conditionsAt, firstMoment, type Moment, type Season, usualAt } from './moment.ts';
import { HeldNeeds, OpenNeeds } from './needs-list.tsx';
import { nextOnPlan } from './next-on-plan.ts';
import { HeaterControls, RoomControls, ThermostatControls } from './try-controls.tsx';
import { useReadings } from './use-readings.ts';

export function PlanPage() {
  const { t, measure, settings } = useSheet();
  const { document, enclosure, changeEnclosure } = useDocument();
  const facts = useFacts();
  const [moment, setMoment] = useState<Moment>(firstMoment);
  const conditions = useMemo(() => (enclosure ? conditionsAt(moment, enclosure) : null), [moment, enclosure]);
  const steady = useSteady(enclosure, conditions);
  const run = usePlan(enclosure);
  const readings = useReadings(enclosure, moment, steady, run);
  const species = facts?.species.find((row) => row.id === enclosure?.animal?.speciesId) ?? null;
  const stage = enclosure?.animal?.stage;
  const needsOfClimate = species && stage ? species.climate[stage] : null;
  const climate = useMemo(() => (needsOfClimate ? wantedClimate(needsOfClimate) : null), [needsOfClimate]);
  const [ref, width] = useWidth<HTMLDivElement>(700);
  const wide = useMedia('(min-width: 1024px)');
  const moves = useMemo<SectionMoves>(
    () => ({
      heater: (index, to) => changeEnclosure((now) => movedHeater(now, index, to), `move-heater-${index}`),
      probe: (index, to) => changeEnclosure((now) => movedProbe(now, index, to), `move-probe-${index}`),
    }),
    [changeEnclosure],
  );
  const onHour = useCallback((hour: number) => setMoment((now) => ({ ...now, at: hour })), []);
  useSayPlanMissing(nextOnPlan(run, t));
  if (!enclosure) return null;

  const day = run.days?.[moment.season] ?? null;
  const { plan } = run;
  const stale = run.forEnclosure !== enclosure;
  const open = plan?.needs.filter((need) => need.verdict !== 'holds') ?? [];
  const hour = typeof moment.at === 'number' ? moment.at : null;
  const figure = { enclosure, climate, width };
  const atChoice = typeof moment.at === 'number' ? 'hour' : moment.at;

  return (
    <main className="board plan">
      <div className="board-drawing" ref={ref}>
        <div className="moment-choice">
          <Choice
            label={t('moment.season')}
            hideLabel
            value={moment.season}
            onChange={(season: Season) => setMoment({ season, at: usualAt[season] })}
            options={[
              { value: 'winter', text: t('season.winter') },
              { value: 'summer', text: t('season.summer') },
            ]}
          />
          <Choice
            label={t('moment.at')}
            hideLabel
            value={atChoice}
            onChange={(at) => setMoment((now) => ({ ...now, at: at === 'hour' ? 6 : at }))}
            options={[
              { value: 'night', text: t('moment.night') },
              { value: 'noon', text: t('moment.noon') },
              { value: 'hour', text: hour === null ? t('moment.hour') : measure.clock(hour) },
            ]}
          />
        </div>
        <SectionFigure {...figure} readings={readings} moves={moves} mostInsideHeight={wide ? 300 : 260} />
        <KeyNumbers readings={readings} climate={climate} />
        {day && (
          <MapFigure
            {...figure}
            day={day}
            season={moment.season}
            hour={hour}
            onHour={onHour}
            stale={run.daysFor !== enclosure}
            mapHeight={wide ? 210 : 240}
          />
        )}
        <FloorFigure {...figure} readings={readings} moves={moves} mostInsideHeight={wide ? 200 : 180} />
      </div>
      <div className="board-sheet">
        <div className="sheet-head">
          <p className="plan-what">
            {t('plan.what', {
              animal: species?.commonName ?? enclosure.animal?.speciesId ?? '',
              stage: stage ? t(`stage.${stage}`) : '',
              box: document.answers.startFrom ? boxName(document.answers.startFrom, t) : enclosure.name,
            })}{' '}
            <a
              href="/"
              onClick={(event) => {
                event.preventDefault();
                go('/');
              }}
            >
              {t('plan.changeAnswers')}
            </a>
          </p>
          <div aria-live="polite" aria-busy={run.working} className={stale ? 'headline headline-stale' : 'headline'}>
            {plan ? (
              <>
                <h1>
                  <VerdictMark verdict={plan.verdict} large />
                </h1>
                <p className="headline-say" lang={settings.language === 'en' ? undefined : 'en'}>
                  {proseInUnits(plan.headline, measure)}
                </p>
              </>
            ) : (
              <h1 className="headline-wait">
                {run.failed || run.faults.length > 0 ? t('plan.noAnswer') : t('plan.working')}
              </h1>
            )}
            <p className="headline-note">
              {run.working ? t('plan.workingNote') : plan ? t('plan.members', { members: plan.members }) : ''}
            </p>
          </div>
          {run.failed && <p className="field-fault">{run.failed}</p>}
          {run.faults.map((fault) => (
            <p key={`${fault.code}${fault.field}`} className="field-fault" lang="en">
              {fault.say} {fault.fix} ({fault.field})
            </p>
          ))}
        </div>
        {plan && open.length > 0 && <OpenNeeds needs={plan.needs} facts={facts} />}
        <section className="sheet-part try" aria-labelledby="try-title">
          <h2 id="try-title">{t('try.title')}</h2>
          <RoomControls season={moment.season} />
          <HeaterControls enclosure={enclosure} />
          <ThermostatControls enclosure={enclosure} />
        </section>
        {plan && <DialAdviceList plan={plan} />}
        {plan && plan.needs.length > open.length && (
          <section className="sheet-part" aria-labelledby="held-title">
            <h2 id="held-title">{t('plan.held', { count: plan.needs.length - open.length })}</h2>
            <HeldNeeds needs={plan.needs} facts={facts} />
          </section>
        )}
        <Cautions facts={facts} />
        <section className="sheet-part model-note">
          <h2>{t('model.title')}</h2>
          <p>{t('model.say')}</p>
          {plan?.notes.map((note) => (
            <p key={`${note.code}${note.field}`} lang="en">
              {proseInUnits(`${note.say} ${note.fix}`, measure)}
            </p>
          ))}
        </section>
      </div>
    </main>
  );
}
