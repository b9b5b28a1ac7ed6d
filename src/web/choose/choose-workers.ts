// The workers behind the choosing sheet. Two share a search and stay while the sheet is open, so that the next question
// finds them warm and knowing; faults and stages run on one of their own that ends with them.
// Leaves out: what is asked and what is done with the answers (use-choose.ts).
import type { ChooseAsk, ChooseEnvelope, ChooseReply, ChooseRequest } from './choose-protocol.ts';

const newWorker = () => new Worker(new URL('./choose-worker.ts', import.meta.url), { type: 'module' });

interface SearchPair {
  readonly lead: Worker;
  readonly close: () => void;
}

let standing: SearchPair | null = null;
let runs = 0;

function newPair(): SearchPair {
  const lead = newWorker();
  // One helper: the second core. More would only warm the machine of a shop.
  const helper = (navigator.hardwareConcurrency || 1) > 1 ? newWorker() : null;
  if (helper) {
    const channel = new MessageChannel();
    helper.postMessage({ kind: 'help' } satisfies ChooseRequest, [channel.port1]);
    lead.postMessage({ kind: 'helper' } satisfies ChooseRequest, [channel.port2]);
  }
  for (const worker of [lead, helper]) worker?.postMessage({ kind: 'ready' } satisfies ChooseRequest);
  return {
    lead,
    close: () => {
      lead.terminate();
      helper?.terminate();
    },
  };
}

/** Workers that nobody looks at any more end after this long; another sheet may ask them first [ms] (our choice). */
const idleMs = 20_000;
let closing: ReturnType<typeof setTimeout> | undefined;

/** Loads the workers before they are asked; they get ready by themselves. */
export function readySearchWorkers(): void {
  clearTimeout(closing);
  standing ??= newPair();
}

/** Lets the workers look at the home of the plan, so that the choosing sheet finds them loaded, compiled and knowing. */
export function warmSearchWorkers(ask: ChooseAsk): void {
  readySearchWorkers();
  runs++;
  standing?.lead.postMessage({ kind: 'warm', run: runs, ask } satisfies ChooseRequest);
}

export function leaveSearchWorkers(): void {
  clearTimeout(closing);
  standing?.lead.postMessage({ kind: 'stop' } satisfies ChooseRequest);
  closing = setTimeout(closeSearchWorkers, idleMs);
}

function closeSearchWorkers(): void {
  standing?.close();
  standing = null;
}

/** Starts a search and gives the way to end it. */
export function startSearch(ask: ChooseAsk, tell: (reply: ChooseReply) => void): () => void {
  readySearchWorkers();
  const pair = standing as SearchPair;
  runs++;
  const run = runs;
  pair.lead.onmessage = ({ data }: MessageEvent<ChooseEnvelope>) => {
    // what an earlier question had under way may still come
    if (data.run === run) tell(data.reply);
  };
  pair.lead.onerror = (event) => {
    closeSearchWorkers();
    tell({ kind: 'failed', say: event.message });
  };
  pair.lead.postMessage({ kind: 'search', run, ask } satisfies ChooseRequest);
  return () => pair.lead.postMessage({ kind: 'stop' } satisfies ChooseRequest);
}

/** Starts faults or stages on a worker that ends with them. */
export function startAlone(kind: 'faults' | 'stages', ask: ChooseAsk, tell: (reply: ChooseReply) => void): () => void {
  const worker = newWorker();
  worker.onmessage = ({ data }: MessageEvent<ChooseEnvelope>) => tell(data.reply);
  worker.onerror = (event) => tell({ kind: 'failed', say: event.message });
  worker.postMessage({ kind, ask } satisfies ChooseRequest);
  return () => worker.terminate();
}
