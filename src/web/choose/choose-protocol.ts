// What the choosing sheet and its workers say to each other. Two workers share a search: one leads and solves too, the
// other only solves; they talk over a channel of their own. Faults and stages run on one of their own.
import type { ShopValue } from '../../husbandry/shop-value.ts';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { FaultFinding, FaultRehearsal } from '../../planning/faults/fault-answer.ts';
import type { AskedHome, JudgedHome } from '../../planning/search/judge-home.ts';
import type { SearchTask } from '../../planning/search/kit-search.ts';
import type { SearchAnswer } from '../../planning/search/search-answer.ts';
import type { SolveSetting } from '../../planning/search/solve-task.ts';
import type { MemberSurface } from '../../planning/search/surface.ts';
import type { HelpingChange } from '../../planning/search/what-helps.ts';
import type { Shelf } from '../../planning/shelf/shelf.ts';
import type { StageRoads } from '../../planning/stages/stage-road.ts';
import type { Fault } from '../../shared/fault.ts';

export interface ChooseAsk {
  readonly enclosure: Enclosure;
  /** The standard that the person named; undefined leaves it to the shop. */
  readonly standardId: string | undefined;
  readonly shopValues: readonly ShopValue[];
  readonly tariffPerKWh: number;
  readonly years: number;
  readonly drawnIsOwned: boolean;
  /** The shop's own; null: the starter shelf. */
  readonly shelf: Shelf | null;
  /** Articles of the shelf that the customer has already. */
  readonly ownedIds: readonly string[];
}

export type ChooseRequest =
  /** To the one that helps, and to the one that leads; each with its end of their channel. */
  | { readonly kind: 'help' }
  | { readonly kind: 'helper' }
  /** Gets ready by itself until it is asked something. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'search'; readonly run: number; readonly ask: ChooseAsk }
  /** Looks at the home before anybody asks, up to a first ranking, which is kept to itself. */
  | { readonly kind: 'warm'; readonly run: number; readonly ask: ChooseAsk }
  | { readonly kind: 'stop' }
  | { readonly kind: 'faults'; readonly ask: ChooseAsk }
  | { readonly kind: 'stages'; readonly ask: ChooseAsk };

export type ChooseReply =
  | { readonly kind: 'own'; readonly used: UsedShopValues }
  | { readonly kind: 'progress'; readonly doneFrac: number }
  | { readonly kind: 'answer'; readonly answer: SearchAnswer }
  | { readonly kind: 'helps'; readonly helps: readonly HelpingChange[] }
  | { readonly kind: 'finding'; readonly finding: FaultFinding }
  | { readonly kind: 'rehearsal'; readonly rehearsal: FaultRehearsal }
  | { readonly kind: 'roads'; readonly roads: StageRoads }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] }
  | { readonly kind: 'failed'; readonly say: string };

/** An answer and the question that it belongs to; 0 where a worker has only one. */
export interface ChooseEnvelope {
  readonly run: number;
  readonly reply: ChooseReply;
}

/** Between the leading worker and its helper. */
export type HelperRequest =
  | { readonly kind: 'prepare'; readonly setting: SolveSetting }
  /** The enclosure comes with the first task of its arrangement. */
  | { readonly kind: 'solve'; readonly seq: number; readonly task: SearchTask; readonly enclosure: Enclosure | null }
  | { readonly kind: 'judge'; readonly seq: number; readonly home: AskedHome };
export type HelperReply = { readonly seq: number } & (
  | { readonly surfaces: readonly MemberSurface[] }
  | { readonly judged: JudgedHome }
);
