// Wall-clock times of a home as words: the clock they were read on, whatever zone this browser is in.
export function wallDay(locale: string, wallS: number): string {
  return new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' }).format(wallS * 1000);
}

export function wallMoment(locale: string, wallS: number): string {
  const shape = { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat(locale, shape).format(wallS * 1000);
}

/** This browser's clock as "2026-11-24T21:05". */
export function wallNow(now: Date): string {
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
