import type { Plan } from '../../../geometry/plan/model.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import type { SecondOpinion } from '../../../geometry/recheck/recheck.ts';
import type { RecheckRequest, RecheckResponse } from './recheck-messages.ts';

const NOT_LOADED: SecondOpinion = { ok: false, cause: 'its code could not be loaded' };

const waiting = new Map<number, { readonly plan: Plan; readonly done: (opinion: SecondOpinion) => void }>();
let calls = 0;
let worker: Worker | null = null;
/** True where workers are not available: the main thread computes instead. */
let onMainThread = typeof Worker === 'undefined';

/** Resolves to the second computation of a plan's verdicts, once per plan. Never rejects: a failure is a result with its cause. */
export const recheckInWorker = memoize(
  (plan: Plan): Promise<SecondOpinion> =>
    new Promise((done) => {
      calls += 1;
      waiting.set(calls, { plan, done });
      send(calls, plan);
    }),
);

function send(number: number, plan: Plan): void {
  if (onMainThread) void computeHere(plan).then((opinion) => resolve({ number, opinion }));
  else startWorker().postMessage({ number, plan: withoutPictures(plan) } satisfies RecheckRequest);
}

/** Returns the plan without pictures and photos: they are megabytes, and no verdict depends on them. */
function withoutPictures({ log: _, levels, ...rest }: Plan): Plan {
  return { ...rest, levels: levels.map(({ tracing: __, ...level }) => level) };
}

function resolve({ number, opinion }: RecheckResponse): void {
  waiting.get(number)?.done(opinion);
  waiting.delete(number);
}

async function computeHere(plan: Plan): Promise<SecondOpinion> {
  try {
    const { recheck } = await import('../../../geometry/recheck/recheck.ts');
    return recheck(plan);
  } catch {
    return NOT_LOADED;
  }
}

function startWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./second-worker.ts', import.meta.url), { type: 'module', name: 'second' });
  worker.addEventListener('message', ({ data }: MessageEvent<RecheckResponse>) => resolve(data));
  worker.addEventListener('error', () => {
    worker?.terminate();
    worker = null;
    onMainThread = true;
    // Retry on the main thread what the worker failed to do.
    for (const [number, { plan }] of [...waiting]) send(number, plan);
  });
  return worker;
}
