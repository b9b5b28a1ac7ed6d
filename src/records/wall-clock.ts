// What the clock on the wall shows: seconds since 1970 as if it kept universal time. The zone is that of the machine the
// program runs on, which stands in the shop; a home in another zone types its own times.

export const wallSecondsOf = (at: Date): number => Math.floor(at.getTime() / 1000) - at.getTimezoneOffset() * 60;
