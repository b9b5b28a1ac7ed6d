// What can go wrong, in a list that is sorted by any column, and the chosen fault in full; the card for a power cut.
import { useState } from 'react';
import { atOnce, type FaultFinding, type PowerCutCard } from '../../planning/faults/fault-answer.ts';
import { faultGuard, faultTitle } from '../messages/kit-words.ts';
import { type NeedSentence, sentence } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { FaultFigure } from './fault-figure.tsx';
import { SortableTable } from './sortable-table.tsx';
import type { ChooseRun } from './use-choose.ts';

interface FaultsPartProps {
  readonly run: ChooseRun;
  readonly width: number;
}

export function FaultsPart({ run, width }: FaultsPartProps) {
  const { t, measure } = useSheet();
  const [picked, setPicked] = useState<string | null>(null);
  const played = run.findings.filter((f) => !f.skipped);
  const skipped = run.findings.filter((f) => f.skipped);
  const lines = run.rehearsal?.lines ?? null;
  const chosen = played.find((f) => f.id === picked) ?? (run.rehearsal ? played[0] : undefined) ?? null;
  if (played.length === 0) return null;
  return (
    <>
      {chosen && <FaultFigure finding={chosen} lines={lines} width={width} />}
      {chosen && <FaultDetail finding={chosen} />}
      <section className="sheet-part" aria-labelledby="faults-title">
        <h2 id="faults-title">{t('faults.listTitle')}</h2>
        <SortableTable
          caption={t('faults.listTitle')}
          first="rank"
          rows={played}
          idOf={(f) => f.id}
          chosen={chosen?.id ?? null}
          onChoose={setPicked}
          columns={[
            {
              key: 'title',
              head: t('faults.fault'),
              value: (f) => faultTitle(f.case, measure).text,
              cell: (f) => <Said {...faultTitle(f.case, measure)} />,
            },
            {
              key: 'hours',
              head: t('faults.hours'),
              value: (f) => f.first?.hours?.median ?? null,
              cell: (f) => <HoursCell finding={f} />,
            },
            {
              key: 'harm',
              head: t('faults.harm'),
              value: (f) => f.case.harm,
              cell: (f) => `${t(`faults.harm.${f.case.harm}`)}, ${t(`faults.likelihood.${f.case.likelihood}`)}`,
            },
            {
              key: 'rank',
              head: t('faults.rank'),
              value: (f) => -f.rank,
              cell: (f) => measure.number(f.rank, 1),
              numeric: true,
            },
          ]}
        />
        <p className="aside">{t('faults.likelihoodNote')}</p>
      </section>
      {run.rehearsal && <CutCard card={run.rehearsal.powerCut} />}
      {skipped.length > 0 && (
        <section className="sheet-part" aria-labelledby="skipped-title">
          <h2 id="skipped-title">{t('faults.skipped')}</h2>
          <ul className="kit-needs">
            {skipped.map((f) => (
              <li key={f.id}>
                <Said {...faultTitle(f.case, measure)} />. <Said {...sentence(f.told, f.played, measure)} />
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

const Said = ({ text, lang }: NeedSentence) => <span lang={lang}>{text}</span>;

export const hoursText = (
  hours: { low: number; median: number; high: number },
  number: (v: number, d?: number) => string,
): string => `${number(hours.median, 1)} h (${number(hours.low, 1)}–${number(hours.high, 1)})`;

function HoursCell({ finding }: { readonly finding: FaultFinding }) {
  const { t, measure } = useSheet();
  const { first } = finding;
  if (!first?.hours) return <>{t('faults.none')}</>;
  return (
    <>
      {`${atOnce(first.hours.high) ? t('faults.atOnce') : hoursText(first.hours, measure.number)} ${t(`faults.line.${first.line.kind}`)}`}
      <span className="kit-change">
        {t('faults.share', {
          some: measure.number(first.shareFrac * finding.versions, 0),
          all: measure.number(finding.versions, 0),
        })}
      </span>
    </>
  );
}

function FaultDetail({ finding }: { readonly finding: FaultFinding }) {
  const { t, measure } = useSheet();
  const unit = finding.first?.line.unit ?? '°C';
  const reading = (v: number, u: '°C' | '%') => measure.text(u === '°C' ? 'temperature' : 'percent', v);
  const { alarm } = finding;
  return (
    <dl className="kit-says">
      <dt>{t('faults.played')}</dt>
      <dd>
        <Said {...sentence(finding.told, finding.played, measure)} />
      </dd>
      {finding.first && (
        <>
          <dt>{t('faults.alarm')}</dt>
          <dd>
            {alarm
              ? t('faults.alarmSay', {
                  instrument: t(`faults.instrument.${alarm.instrument}`),
                  reading: reading(alarm.atReading, alarm.unit),
                  when: atOnce(alarm.afterH)
                    ? t('faults.atOnce')
                    : t('faults.after', { hours: `${measure.number(alarm.afterH, 1)} h` }),
                })
              : t('faults.alarmNone')}
          </dd>
        </>
      )}
      <dt>{t('faults.guards')}</dt>
      {finding.guards.map((g) => (
        <dd key={g.guard}>
          <Said {...sentence(g.told, g.say, measure)} />{' '}
          <strong>
            {g.stops
              ? t('faults.guardStops')
              : t('faults.guardDelays', {
                  hours: `${measure.number(g.hours ?? 0, 1)} h`,
                  worst: reading(g.worstWith, unit),
                  without: reading(g.worstWithout, unit),
                })}
          </strong>
        </dd>
      ))}
      <dd>
        <Said {...faultGuard(finding.case, measure)} />
      </dd>
    </dl>
  );
}

function CutCard({ card }: { readonly card: PowerCutCard }) {
  const { t, measure } = useSheet();
  return (
    <section className="sheet-part cut-card" aria-labelledby="cut-title">
      <h2 id="cut-title">{t('faults.cut')}</h2>
      <p>
        {card.hoursToLine
          ? t('faults.cutSay', {
              when: atOnce(card.hoursToLine.high)
                ? t('faults.atOnce')
                : t('faults.after', { hours: hoursText(card.hoursToLine, measure.number) }),
              room: measure.text('temperature', card.roomC),
            })
          : t('faults.cutNever')}{' '}
        {card.insulationHours !== null &&
          t('faults.cutFoam', { hours: `${measure.number(card.insulationHours, 1)} h` })}
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{t('faults.cutAfter')}</th>
            <th scope="col">{t('faults.cutWarmest')}</th>
            <th scope="col">{t('faults.cutCoolest')}</th>
          </tr>
        </thead>
        <tbody>
          {card.after.map((a) => (
            <tr key={a.hours}>
              <th scope="row">{`${a.hours} h`}</th>
              <td>{measure.text('temperature', a.warmestC)}</td>
              <td>{measure.text('temperature', a.coolestC)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ol className="cut-steps">
        {card.steps.map((step, i) => (
          <li key={step}>
            <Said {...sentence(card.toldSteps[i], step, measure)} />
          </li>
        ))}
      </ol>
    </section>
  );
}
