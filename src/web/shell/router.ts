// Which sheet the address names, and going to another one.
import { useSyncExternalStore } from 'react';

export type Route =
  | { readonly page: 'enquiry' }
  | { readonly page: 'plan'; readonly id: string | null }
  | { readonly page: 'choose'; readonly id: string | null }
  | { readonly page: 'animal'; readonly path: string }
  | { readonly page: 'account'; readonly path: string }
  | { readonly page: 'proof'; readonly id: string }
  | { readonly page: 'placement'; readonly id: string | null }
  | { readonly page: 'today'; readonly path: string }
  | { readonly page: 'keeper'; readonly secret: string }
  | { readonly page: 'reference'; readonly path: string }
  | { readonly page: 'shelf'; readonly path: string };

export function routeFrom(path: string): Route {
  if (/^\/(?:animals|round|register|call)(?:\/|$)/.test(path)) return { page: 'animal', path };
  if (/^\/shelf\/?$/.test(path)) return { page: 'shelf', path };
  if (/^\/(?:account|people)(?:\/|$)/.test(path)) return { page: 'account', path };
  if (/^\/(?:today|aftercare|own-figures|instruments)(?:\/|$)/.test(path)) return { page: 'today', path };
  if (/^\/(?:species|space|lists)(?:\/|$)/.test(path)) return { page: 'reference', path };
  const choose = /^\/choose(?:\/([0-9a-f-]+))?\/?$/.exec(path);
  if (choose) return { page: 'choose', id: choose[1] ?? null };
  const proof = /^\/proof\/([0-9a-f-]{36})\/?$/.exec(path)?.[1];
  if (proof) return { page: 'proof', id: proof };
  const placement = /^\/placement(?:s|\/([0-9a-f-]{36}))\/?$/.exec(path);
  if (placement) return { page: 'placement', id: placement[1] ?? null };
  const keeper = /^\/k\/([A-Za-z0-9_-]{20,60})\/?$/.exec(path)?.[1];
  if (keeper) return { page: 'keeper', secret: keeper };
  const plan = /^\/plan(?:\/([0-9a-f-]+))?\/?$/.exec(path);
  return plan ? { page: 'plan', id: plan[1] ?? null } : { page: 'enquiry' };
}

const listeners = new Set<() => void>();
const tellAll = () => {
  for (const listener of listeners) listener();
};

export function go(path: string, replace = false): void {
  if (path === location.pathname) return;
  if (replace) history.replaceState(null, '', path);
  else {
    history.pushState(null, '', path);
    scrollTo(0, 0);
  }
  tellAll();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  addEventListener('popstate', tellAll);
  return () => {
    listeners.delete(listener);
    if (listeners.size === 0) removeEventListener('popstate', tellAll);
  };
}

export function usePath(): string {
  return useSyncExternalStore(subscribe, () => location.pathname);
}
