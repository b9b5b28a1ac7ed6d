// Lets the pages open without a connection once the round was opened with one: asks the browser to keep them.

export function keepPagesForOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  // Refused in private windows and on plain http from another machine; the round then works as long as it stays open.
  navigator.serviceWorker.register('/offline.js').catch(() => undefined);
}
