// The thread of a placement in one line of steps: enquiry, plan, proof, examination, release, pack, aftercare; each with
// where it stands and its day, and each the way to its own sheet.
import { useSaying } from '../animal/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import type { PlacementSheet } from './placement-api.ts';

export type StepId = 'enquiry' | 'plan' | 'proof' | 'examination' | 'release' | 'pack' | 'aftercare';

interface Step {
  readonly id: StepId;
  /** Done well, done and not well, not done. */
  readonly state: 'done' | 'wrong' | 'to-do';
  readonly word: string;
  readonly on: string | null;
  readonly path: string | null;
}

export function ThreadPart({ sheet }: { readonly sheet: PlacementSheet }) {
  const { t } = useSheet();
  const say = useSaying();
  return (
    <nav aria-label={t('thread.label')}>
      <ol className="thread">
        {useSteps(sheet).map((step) => (
          <li key={step.id} className={`thread-step thread-${step.state}`}>
            <StepName step={step} />
            <span className="thread-word">{step.word}</span>
            {step.on && <time dateTime={step.on}>{say.day(step.on.slice(0, 10))}</time>}
          </li>
        ))}
      </ol>
    </nav>
  );
}

function StepName({ step }: { readonly step: Step }) {
  const { t } = useSheet();
  const { path } = step;
  if (path === null) return <span className="thread-name">{t(`thread.${step.id}`)}</span>;
  return (
    <a
      className="thread-name"
      href={path}
      onClick={(event) => {
        if (path.startsWith('/api/')) return;
        event.preventDefault();
        go(path);
      }}
    >
      {t(`thread.${step.id}`)}
    </a>
  );
}

function useSteps(sheet: PlacementSheet): readonly Step[] {
  const { t } = useSheet();
  const { enquiry, plan, proof, animal, events, state, release } = sheet;
  const examined = release.findings.find((one) => one.id === 'examination')?.answer;
  const handed = release.findings.find((one) => one.id === 'information');
  const released = state === 'released' ? events.findLast((one) => one.kind === 'released') : undefined;
  const refused = state === 'refused' ? events.findLast((one) => one.kind === 'refused') : undefined;
  const planned = plan === null ? 'none' : plan.current ? plan.verdict : 'old';
  const proven = proof === null ? 'none' : proof.current ? proof.verdict : 'old';
  return [
    {
      id: 'enquiry',
      state: 'done',
      word: t('thread.enquiry.there'),
      on: enquiry.createdAt,
      path: `/plan/${enquiry.id}`,
    },
    {
      id: 'plan',
      state: planned === 'holds' ? 'done' : planned === 'fails' ? 'wrong' : 'to-do',
      word: t(`thread.plan.${planned}`),
      on: plan?.at ?? null,
      path: `/plan/${enquiry.id}`,
    },
    {
      id: 'proof',
      state: proven === 'proven' ? 'done' : proven === 'failed' ? 'wrong' : 'to-do',
      word: t(`thread.proof.${proven}`),
      on: proof?.at ?? null,
      path: `/proof/${enquiry.id}`,
    },
    {
      id: 'examination',
      state: examined === 'met' || released ? 'done' : examined === 'not-met' ? 'wrong' : 'to-do',
      word: t(released ? 'thread.examination.met' : `thread.examination.${examined ?? 'not-known'}`),
      on: animal.lookedOver?.on ?? null,
      path: `/animals/${animal.id}/look-over`,
    },
    {
      id: 'release',
      state: released ? 'done' : refused ? 'wrong' : 'to-do',
      word: t(
        state === 'open' ? (release.open ? 'thread.release.ready' : 'thread.release.shut') : `placement.state.${state}`,
      ),
      on: (released ?? refused)?.at ?? null,
      path: null,
    },
    {
      id: 'pack',
      state: handed?.answer === 'met' ? 'done' : 'to-do',
      word: t(handed?.answer === 'met' ? 'thread.pack.handed' : 'thread.pack.to-do'),
      on: handed?.answer === 'met' ? handed.evidence.on : null,
      path: null,
    },
    {
      id: 'aftercare',
      state: 'to-do',
      word: t('thread.aftercare.to-do'),
      on: null,
      path: released ? `/aftercare/${sheet.id}` : null,
    },
  ];
}
