// Nobody sees the shop's sheets without being signed in. A lock, a switch or a session that ran out lays itself over the
// sheets: they stay as they are beneath, unseen, and come back with everything that was typed.
import './account.css';
import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { lock } from './account-api.ts';
import { type Here, lookWhoIsHere, useDoor } from './here.ts';
import { LockSheet } from './lock-sheet.tsx';
import { ProveSheet } from './prove-sheet.tsx';
import { SetUp } from './set-up.tsx';
import { SignIn } from './sign-in.tsx';

/** Nobody touched the sheet for so long: it locks (the server does the same by its own clock). */
const idleMs = 30 * 60_000;

export function Gate({ children }: { readonly children: ReactNode }) {
  const { here, proving } = useDoor();
  const [before, setBefore] = useState<string | null>(null);
  useEffect(() => {
    void lookWhoIsHere();
    const again = () => void lookWhoIsHere();
    addEventListener('online', again);
    return () => removeEventListener('online', again);
  }, []);
  const inside = here.state === 'in';
  const name = inside ? here.me.name : null;
  useEffect(() => {
    if (name !== null) setBefore(name);
  }, [name]);
  useIdleLock(inside);
  const covered = !inside || proving;
  return (
    <>
      {(inside || before !== null) && <Beneath covered={covered}>{children}</Beneath>}
      {covered && <Cover here={here} proving={proving} before={before} />}
    </>
  );
}

function Cover({
  here,
  proving,
  before,
}: {
  readonly here: Here;
  readonly proving: boolean;
  readonly before: string | null;
}) {
  const { t } = useSheet();
  if (here.state === 'waiting') return <main className="notice">{t('acc.waiting')}</main>;
  if (here.state === 'unreached')
    return (
      <main className="notice">
        <p>{t('acc.unreached')}</p>
        <Button className="button" onPress={() => void lookWhoIsHere()}>
          {t('acc.again')}
        </Button>
      </main>
    );
  if (here.state === 'set-up') return <SetUp places={here.places} />;
  if (here.state === 'out') return <SignIn again={before} />;
  if (here.state === 'locked') return <LockSheet me={here.me} people={here.people} />;
  return proving ? <ProveSheet name={here.me.name} /> : null;
}

/** What was being done, kept as it is; where one was on the sheet is found again. */
function Beneath({ covered, children }: { readonly covered: boolean; readonly children: ReactNode }) {
  const at = useRef(0);
  useEffect(() => {
    if (covered) return;
    const note = () => {
      at.current = scrollY;
    };
    addEventListener('scroll', note, { passive: true });
    return () => removeEventListener('scroll', note);
  }, [covered]);
  useLayoutEffect(() => {
    if (!covered && at.current > 0) scrollTo(0, at.current);
  }, [covered]);
  return <div hidden={covered}>{children}</div>;
}

function useIdleLock(inside: boolean): void {
  useEffect(() => {
    if (!inside) return;
    let touchedMs = performance.now();
    const touched = () => {
      touchedMs = performance.now();
    };
    const timer = setInterval(() => {
      if (performance.now() - touchedMs > idleMs) void lock().then(lookWhoIsHere);
    }, 30_000);
    for (const name of ['pointerdown', 'keydown'] as const) addEventListener(name, touched);
    return () => {
      clearInterval(timer);
      for (const name of ['pointerdown', 'keydown'] as const) removeEventListener(name, touched);
    };
  }, [inside]);
}
