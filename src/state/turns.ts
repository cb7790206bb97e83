/**
 * While a hand pulls at walls and rooms, every frame asks for work that together does not fit into it. Dear pieces of it take
 * turns then: one a frame, the one that waited longest. What is refused is owed, and done as soon as it may be; at rest
 * nobody asks here.
 */
export type DearWork = 'region' | 'reports';

/** Work that took less, ms, is not dear: on a quick machine nothing waits. */
const CHEAP_MS = 1.2;
/** Asks that are nearer together than this, ms, are of one frame. */
const FRAME_MS = 8;
/** Who has not asked for so long, ms, waits for nothing. */
const ASKING_MS = 60;

/** From so many things on a pull is a heavy one: a room with all in it. */
const MANY = 4;
/** What a heavy pull lets its shading and the verdicts of what stands wait, ms: seven frames. */
const PAUSE_MS = 120;

interface Work {
  asked: number;
  done: number;
  cost: number;
}

const works: Record<DearWork, Work> = {
  region: { asked: 0, done: 0, cost: 0 },
  reports: { asked: 0, done: 0, cost: 0 },
};
let owed = false;

/**
 * Whether it is its turn.
 * @param pulled how many things the hand pulls: with many of them all that is drawn about them changes too, and it waits a few frames
 */
export function mayWork(kind: DearWork, pulled: number, now = performance.now()): boolean {
  const own = works[kind];
  own.asked = now;
  if (own.cost < CHEAP_MS) return true;
  if (pulled >= MANY && now - own.done < PAUSE_MS) {
    owed = true;
    return false;
  }
  const rivals = Object.values(works).filter(
    (work) => work !== own && work.cost >= CHEAP_MS && now - work.asked < ASKING_MS,
  );
  const may = rivals.every((rival) => now - rival.done > FRAME_MS && rival.done >= own.done);
  owed ||= !may;
  return may;
}

/** Does it, and notes what it costs. */
export function timedWork<T>(kind: DearWork, work: () => T): T {
  const start = performance.now();
  const result = work();
  const now = performance.now();
  works[kind].done = now;
  works[kind].cost = now - start;
  return result;
}

/** Whether something was refused since it was last asked. */
export function takeOwed(): boolean {
  const was = owed;
  owed = false;
  return was;
}
