// Who may use a door? Every door of /api says so in its config; one that does not is refused when the program starts.
import type { FastifyInstance } from 'fastify';
import type { Role } from '../desk/desk-context.ts';

/** "anyone": no account needed. "link": the secret in the address is the key, and opens that one thing only.
 *  "self": whoever is signed in. "register": also an inspector, who only looks. "desk": works at the counter.
 *  "manager", "owner": these and above. */
export type Who = 'anyone' | 'link' | 'self' | 'register' | 'desk' | 'manager' | 'owner';

declare module 'fastify' {
  interface FastifyContextConfig {
    who?: Who;
  }
  interface FastifyInstance {
    /** Every door of /api with who may use it. */
    whoTable: readonly WhoRow[];
  }
}

const rolesOf: Readonly<Record<Exclude<Who, 'anyone' | 'link'>, readonly Role[]>> = {
  self: ['inspector', 'assistant', 'manager', 'owner'],
  register: ['inspector', 'assistant', 'manager', 'owner'],
  desk: ['assistant', 'manager', 'owner'],
  manager: ['manager', 'owner'],
  owner: ['owner'],
};

export interface WhoRow {
  readonly method: string;
  readonly url: string;
  readonly who: Who;
}

export const needsAccount = (who: Who): who is keyof typeof rolesOf => who !== 'anyone' && who !== 'link';

export const roleMay = (role: Role, who: keyof typeof rolesOf): boolean => rolesOf[who].includes(role);

/** Refuses every door of /api that does not say who may use it, and keeps the table of those that do. */
export function requireWho(app: FastifyInstance): void {
  const table: WhoRow[] = [];
  app.decorate('whoTable', table);
  app.addHook('onRoute', (route) => {
    if (!route.url.startsWith('/api/')) return;
    const who = route.config?.who;
    if (who !== undefined) {
      for (const method of [route.method].flat()) table.push({ method, url: route.url, who });
      return;
    }
    throw new Error(
      `${String(route.method)} ${route.url} does not say who may use it: add config: { who: … } (src/server/who.ts)`,
    );
  });
}
