/**
 * Schedules heavy work while walls and rooms are dragged, when one frame cannot hold all of it: one piece a frame, the one that has
 * waited longest. What a frame has no time for is deferred to the next. At rest nothing is scheduled.
 */
type HeavyWork = 'region' | 'reports';

export interface DragScheduler {
  /**
   * Whether this frame has time for the work; a refusal counts as deferred.
   * @param dragged how many items are dragged: with many of them all that is drawn about them changes too, and heavy work waits longer
   */
  mayRun(kind: HeavyWork, dragged: number): boolean;
  /** Runs the work and notes what it costs. */
  run<T>(kind: HeavyWork, work: () => T): T;
  /** Whether work was deferred since this was last asked: then another frame is wanted. */
  takeDeferred(): boolean;
}

/** Work that took less, ms, is not heavy: on a quick machine nothing waits. */
const CHEAP_MS = 1.2;
/** Requests that are closer together than this, ms, are of one frame. */
const FRAME_MS = 8;
/** Work that was not requested for so long, ms, competes with nothing. */
const REQUESTED_MS = 60;
/** From so many items on a drag is a heavy one: a room with all in it. */
const MANY = 4;
/** In a heavy drag, heavy work runs at most so often, ms: every seventh frame. */
const PAUSE_MS = 120;

interface Work {
  requested: number;
  done: number;
  cost: number;
}

/** @param now the clock, ms */
export function createDragScheduler(now: () => number): DragScheduler {
  const works: Record<HeavyWork, Work> = {
    region: { requested: Number.NEGATIVE_INFINITY, done: Number.NEGATIVE_INFINITY, cost: 0 },
    reports: { requested: Number.NEGATIVE_INFINITY, done: Number.NEGATIVE_INFINITY, cost: 0 },
  };
  let deferred = false;

  const isItsTurn = (own: Work, dragged: number, time: number): boolean => {
    if (own.cost < CHEAP_MS) return true;
    if (dragged >= MANY && time - own.done < PAUSE_MS) return false;
    const rivals = Object.values(works).filter(
      (work) => work !== own && work.cost >= CHEAP_MS && time - work.requested < REQUESTED_MS,
    );
    return rivals.every((rival) => time - rival.done > FRAME_MS && rival.done >= own.done);
  };
  return {
    mayRun: (kind, dragged) => {
      const time = now();
      works[kind].requested = time;
      const may = isItsTurn(works[kind], dragged, time);
      deferred ||= !may;
      return may;
    },
    run: (kind, work) => {
      const start = now();
      const result = work();
      works[kind].done = now();
      works[kind].cost = works[kind].done - start;
      return result;
    },
    takeDeferred: () => {
      const was = deferred;
      deferred = false;
      return was;
    },
  };
}
