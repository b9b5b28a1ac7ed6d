// Coming to a sheet: one press leads past the lines on top, the window is named after the sheet, and after going on to
// another sheet the keyboard and the screen reader stand at its beginning.
import { useEffect, useRef } from 'react';
import { useSheet } from '../settings/settings-context.tsx';
import { usePath } from './router.ts';

/** A sheet that has no heading by then is named by nothing [ms] (our choice). */
const longestWaitMs = 20_000;
/** A heading that is still the one of before by then is the new sheet's own [ms] (our choice). */
const sameAfterMs = 1200;

interface Seen {
  readonly path: string;
  readonly heading: HTMLElement | null;
  readonly text: string;
}

export function Arrival() {
  const { t, settings } = useSheet();
  const path = usePath();
  const name = t('app.name');
  // The language belongs to it: headings are said anew in another one.
  const { book } = settings;
  const seen = useRef<Seen & { readonly book: string }>({ path, book, heading: null, text: '' });
  useEffect(() => {
    const moved = seen.current.path !== path;
    const left = document.activeElement;
    return whenThere(seen.current, (heading) => {
      const text = heading.textContent ?? '';
      seen.current = { path, book, heading, text };
      document.title = `${text} · ${name}`;
      // Who has gone on to a control of the new sheet meanwhile stays there.
      const at = document.activeElement;
      if (moved && (at === document.body || at === left)) stand(heading);
    });
  }, [path, name, book]);
  return (
    <button type="button" className="skip" onClick={toSheet}>
      {t('app.skip')}
    </button>
  );
}

function toSheet(): void {
  const sheet = headingNow() ?? document.querySelector<HTMLElement>('main');
  if (sheet === null) return;
  sheet.scrollIntoView({ block: 'center' });
  stand(sheet);
}

function stand(at: HTMLElement): void {
  at.tabIndex = -1;
  at.focus({ preventScroll: true });
}

/** The heading of the sheet that is seen; a sheet that waits under a lock is not. */
function headingNow(): HTMLElement | null {
  const main = [...document.querySelectorAll<HTMLElement>('main')].find((one) => one.checkVisibility());
  return main?.querySelector<HTMLElement>('h1, h2') ?? null;
}

/** Calls once with the heading of the sheet, as soon as it is another than before.
 *  @returns gives up waiting */
function whenThere(before: Seen, found: (heading: HTMLElement) => void): () => void {
  const startedMs = performance.now();
  const look = (): boolean => {
    const heading = headingNow();
    if (!heading?.textContent) return false;
    const same = heading === before.heading && heading.textContent === before.text;
    if (same && performance.now() - startedMs < sameAfterMs) return false;
    found(heading);
    return true;
  };
  if (look()) return () => undefined;
  const stop = () => {
    observer.disconnect();
    clearTimeout(again);
    clearTimeout(late);
  };
  const lookOnce = () => {
    if (look()) stop();
  };
  const observer = new MutationObserver(lookOnce);
  observer.observe(document.body, { childList: true, characterData: true, subtree: true });
  const again = setTimeout(lookOnce, sameAfterMs);
  const late = setTimeout(stop, longestWaitMs);
  return stop;
}
