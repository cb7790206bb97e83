import type { Plan } from '../../../geometry/plan/model.ts';
import type { SecondOpinion } from '../../../geometry/recheck/recheck.ts';
import type { RecheckRequest, RecheckResponse } from './recheck-messages.ts';

const NOT_LOADED: SecondOpinion = { ok: false, cause: 'its code could not be loaded' };

const answers = new WeakMap<Plan, Promise<SecondOpinion>>();
const waiting = new Map<number, { readonly plan: Plan; readonly done: (opinion: SecondOpinion) => void }>();
let calls = 0;
let worker: Worker | null = null;
/** Set where the browser gives no worker: the page then does it itself, between two frames. */
let alone = typeof Worker === 'undefined';

/** The verdicts of a plan computed a second time; the same plan is computed once. Never rejects: a failure is an answer. */
export function recheckInWorker(plan: Plan): Promise<SecondOpinion> {
  const known = answers.get(plan);
  if (known) return known;
  const answer = new Promise<SecondOpinion>((done) => {
    calls += 1;
    waiting.set(calls, { plan, done });
    ask(calls, plan);
  });
  answers.set(plan, answer);
  return answer;
}

function ask(number: number, plan: Plan): void {
  if (alone) void computeHere(plan).then((opinion) => finish({ number, opinion }));
  else theWorker().postMessage({ number, plan: withoutPictures(plan) } satisfies RecheckRequest);
}

/** Pictures and photos are megabytes, and no verdict looks at them. */
function withoutPictures({ log: _, levels, ...rest }: Plan): Plan {
  return { ...rest, levels: levels.map(({ tracing: __, ...level }) => level) };
}

function finish({ number, opinion }: RecheckResponse): void {
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

function theWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./second-worker.ts', import.meta.url), { type: 'module', name: 'second' });
  worker.addEventListener('message', ({ data }: MessageEvent<RecheckResponse>) => finish(data));
  worker.addEventListener('error', () => {
    worker?.terminate();
    worker = null;
    alone = true;
    // What the worker could not do is tried here.
    for (const [number, { plan }] of [...waiting]) ask(number, plan);
  });
  return worker;
}
