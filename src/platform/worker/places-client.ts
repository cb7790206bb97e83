import type { Plan } from '../../../geometry/plan/model.ts';
import type { BestPlace, PlaceQuery } from './place-query.ts';
import type { PlacesRequest, PlacesResponse } from './places-messages.ts';

interface PendingRequest {
  readonly call: PlacesRequest;
  readonly done: (places: readonly BestPlace[]) => void;
}

/**
 * Requests the best places from the worker. Of the pending requests with the same `line` only the newest is kept, so that dragging a slider
 * builds no queue. `done` is not called for dropped requests.
 */
export function requestPlaces(
  line: string,
  plan: Plan,
  levelId: string,
  wanted: PlaceQuery,
  done: PendingRequest['done'],
): void {
  calls += 1;
  waiting.set(line, { call: { number: calls, plan, levelId, wanted }, done });
  sendNext();
}

/** Drops the pending request of a line. */
export function cancelRequests(line: string): void {
  waiting.delete(line);
}

let calls = 0;
const waiting = new Map<string, PendingRequest>();
let running: PendingRequest | null = null;
let worker: Worker | null = null;
/** True where workers are not available: the main thread computes instead. */
let onMainThread = typeof Worker === 'undefined';

function sendNext(): void {
  if (running) return;
  const [entry] = waiting;
  if (!entry) return;
  const [line, call] = entry;
  waiting.delete(line);
  running = call;
  if (onMainThread) void findOnMainThread(call.call).then(finish, rejectAndContinue);
  else startWorker().postMessage(call.call);
}

async function findOnMainThread({ number, plan, levelId, wanted }: PlacesRequest): Promise<PlacesResponse> {
  const { findPlaces } = await import('./find-places.ts');
  await new Promise((done) => setTimeout(done, 0));
  return { number, places: findPlaces(plan, levelId, wanted) };
}

/** Continues with the next request; the page's error handler receives the error. */
function rejectAndContinue(error: unknown): never {
  running = null;
  sendNext();
  throw error;
}

function finish({ number, places }: PlacesResponse): void {
  if (running?.call.number !== number) return;
  const { done } = running;
  running = null;
  done(places);
  sendNext();
}

function startWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./seek-worker.ts', import.meta.url), { type: 'module', name: 'seek' });
  worker.addEventListener('message', ({ data }: MessageEvent<PlacesResponse>) => finish(data));
  worker.addEventListener('error', () => {
    worker?.terminate();
    worker = null;
    onMainThread = true;
    // Retry on the main thread; an error there reaches the page's error handler.
    if (running) waiting.set('once more', running);
    running = null;
    sendNext();
  });
  return worker;
}
