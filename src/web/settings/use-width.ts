// How wide an element is right now, so that drawings keep their lettering at one size on every screen.
import { type RefCallback, useLayoutEffect, useState } from 'react';

/** The element may come later than what asks for its width: a sheet that waits for its numbers has no drawing yet. */
export function useWidth<E extends Element>(first: number): readonly [RefCallback<E>, number] {
  const [element, ref] = useState<E | null>(null);
  const [widthPx, setWidthPx] = useState(first);
  useLayoutEffect(() => {
    if (!element) return;
    const read = () => {
      const width = Math.round(element.getBoundingClientRect().width);
      if (width > 0) setWidthPx(width);
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(element);
    return () => observer.disconnect();
  }, [element]);
  return [ref, widthPx];
}

/** Whether a media query holds now. */
export function useMedia(query: string): boolean {
  const [holds, setHolds] = useState(() => matchMedia(query).matches);
  useLayoutEffect(() => {
    const list = matchMedia(query);
    const read = () => setHolds(list.matches);
    read();
    list.addEventListener('change', read);
    return () => list.removeEventListener('change', read);
  }, [query]);
  return holds;
}

/** Height of the window [px]. */
export function useViewHeight(): number {
  const [heightPx, setHeightPx] = useState(() => innerHeight);
  useLayoutEffect(() => {
    const read = () => setHeightPx(innerHeight);
    addEventListener('resize', read);
    return () => removeEventListener('resize', read);
  }, []);
  return heightPx;
}
