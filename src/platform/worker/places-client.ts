import type { Plan } from '../../../geometry/plan/model.ts';
import type { BestPlace, PlaceQuery } from './find-places.ts';
import type { PlacesRequest, PlacesResponse } from './places-messages.ts';

interface Waiting {
  readonly call: PlacesRequest;
  readonly done: (places: readonly BestPlace[]) => void;
}

/**
 * Asks the worker for good places. A caller hands over its own `line`: of the calls that wait in one line only the newest is
 * kept, so that a height slider leaves no queue behind. `done` is not called for those that are dropped.
 */
export function requestPlaces(
  line: string,
  plan: Plan,
  levelId: string,
  wanted: PlaceQuery,
  done: Waiting['done'],
): void {
  calls += 1;
  waiting.set(line, { call: { number: calls, plan, levelId, wanted }, done });
  next();
}

/** Drops what a line still waits for. */
export function cancelRequests(line: string): void {
  waiting.delete(line);
}

let calls = 0;
const waiting = new Map<string, Waiting>();
let running: Waiting | null = null;
let worker: Worker | null = null;
/** Set where the browser gives no worker: the page then does it itself, between two frames. */
let alone = typeof Worker === 'undefined';

function next(): void {
  if (running) return;
  const [entry] = waiting;
  if (!entry) return;
  const [line, call] = entry;
  waiting.delete(line);
  running = call;
  if (alone) void seekHere(call.call).then(finish, stumble);
  else theWorker().postMessage(call.call);
}

async function seekHere({ number, plan, levelId, wanted }: PlacesRequest): Promise<PlacesResponse> {
  const { findPlaces } = await import('./find-places.ts');
  await new Promise((done) => setTimeout(done, 0));
  return { number, places: findPlaces(plan, levelId, wanted) };
}

/** The next call is not held up; the page's own guard hears of it. */
function stumble(error: unknown): never {
  running = null;
  next();
  throw error;
}

function finish({ number, places }: PlacesResponse): void {
  if (running?.call.number !== number) return;
  const { done } = running;
  running = null;
  done(places);
  next();
}

function theWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./seek-worker.ts', import.meta.url), { type: 'module', name: 'seek' });
  worker.addEventListener('message', ({ data }: MessageEvent<PlacesResponse>) => finish(data));
  worker.addEventListener('error', () => {
    worker?.terminate();
    worker = null;
    alone = true;
    // What the worker could not do is done here: where that throws too, the page's own guard hears of it.
    if (running) waiting.set('once more', running);
    running = null;
    next();
  });
  return worker;
}
