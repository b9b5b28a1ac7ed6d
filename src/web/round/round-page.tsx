// The daily round: one large touch for "well", one more for anything else; what is missed or stands out is seen at once.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { EventBodies } from '../../animal/event.ts';
import type { RoundLine } from '../../animal/round.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useSaying } from '../animal/say.ts';
import { useSpecies } from '../animal/use-species.ts';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { begunAt } from '../state/begun.ts';
import { keepPagesForOffline } from './offline-pages.ts';
import { RoundDetail, roundPlace } from './round-detail.tsx';
import { useRound } from './use-round.ts';

const allWell: EventBodies['round'] = {
  state: 'well',
  water: true,
  locked: true,
  droppings: false,
  warmC: null,
  coolC: null,
  rhPct: null,
  note: '',
};

export function RoundPage() {
  const { t, measure } = useSheet();
  const { lines, waiting, refused, failed, check, again } = useRound();
  const [chosen, setOpen] = useState<string | null | undefined>(undefined);
  useEffect(keepPagesForOffline, []);
  if (lines === null) return <NotReached failed={failed} again={again} />;
  // Until somebody opens or shuts one, the one that was begun before stands open.
  const open = chosen === undefined ? lines.find((line) => begunAt(roundPlace(line.place)) !== null)?.place : chosen;
  const done = lines.filter((line) => line.state !== 'to-do').length;
  const out = lines.filter((line) => line.state === 'stands-out').length;
  return (
    <main className="animal-sheet round-sheet">
      <div className="round-head">
        <h1>{t('round.title')}</h1>
        <p className="lead" aria-live="polite">
          {t('round.sum', { done, of: lines.length, out })}{' '}
          {done === lines.length ? t('round.allDone') : t('round.left', { n: lines.length - done })}
        </p>
        <progress className="look-progress" max={lines.length} value={done} aria-label={t('round.title')} />
        <p className={waiting > 0 ? 'round-waiting' : 'field-hint'} role="status">
          {waiting > 0 ? t('round.offline', { n: waiting }) : t('round.sent')}
        </p>
        {refused.length > 0 && (
          <p className="field-fault">
            {t('round.refused', { n: refused.length, say: faultSentences(refused[0]?.faults ?? [], measure) })}
          </p>
        )}
      </div>
      {lines.length === 0 && <p className="lead">{t('round.none')}</p>}
      <ol className="round-list">
        {lines.map((line) => (
          <RoundRow
            key={line.place}
            line={line}
            isOpen={open === line.place}
            onOpen={() => setOpen(open === line.place ? null : line.place)}
            onCheck={(body) => {
              check(line, body);
              setOpen(null);
            }}
          />
        ))}
      </ol>
    </main>
  );
}

interface RoundRowProps {
  readonly line: RoundLine;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  readonly onCheck: (body: EventBodies['round']) => void;
}

function RoundRow({ line, isOpen, onOpen, onCheck }: RoundRowProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { nameOf } = useSpecies();
  const names = line.animals.map((one) => `${one.callName} · ${nameOf(one.speciesId)}`).join(', ');
  const missed =
    line.missedDays > 0 ? (line.lastOn === null ? t('round.never') : t('round.missed', { n: line.missedDays })) : null;
  return (
    <li className={`round-row round-${line.state}`}>
      <span className="round-place">{line.place}</span>
      <span className="round-what">
        {names}
        {line.state !== 'to-do' && (
          <span className="round-state"> · {t(line.state === 'well' ? 'round.done' : 'round.out')}</span>
        )}
        {missed && <strong className="round-missed">{missed}</strong>}
        {line.reasons.map((why, i) => (
          <strong key={`${why.key}-${String(i)}`} className="round-reason">
            {say.reason(why)}
          </strong>
        ))}
      </span>
      <Button
        className="button button-quiet round-look"
        aria-expanded={isOpen}
        aria-label={`${line.place}: ${t('round.look')}`}
        onPress={onOpen}
      >
        {t('round.look')}
      </Button>
      <Button
        className="button round-well"
        aria-label={`${line.place}: ${t('round.well')}`}
        onPress={() => onCheck(allWell)}
      >
        {t('round.well')}
      </Button>
      {isOpen && <RoundDetail start={allWell} place={line.place} onKeep={onCheck} onClose={onOpen} />}
    </li>
  );
}
