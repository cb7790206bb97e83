/**
 * Schedules heavy work while walls and rooms are dragged, when one frame cannot hold all of it: one kind of work per frame, the one that
 * has waited longest. The rest is deferred to the next frame. At rest nothing is scheduled.
 */
type HeavyWork = 'region' | 'reports';

export interface DragScheduler {
  /**
   * Whether this frame has time for the work; a refusal counts as deferred.
   * @param dragged number of items that are dragged: with many of them more is repainted, so heavy work waits longer
   */
  mayRun(kind: HeavyWork, dragged: number): boolean;
  /** Runs the work and notes what it costs. */
  run<T>(kind: HeavyWork, work: () => T): T;
  /** Whether work was deferred since the last call: then another frame is needed. */
  takeDeferred(): boolean;
}

/** Work that took less than this is not heavy, ms: on a fast machine nothing waits. */
const CHEAP_MS = 1.2;
/** Requests that are closer together than this are of one frame, ms. */
const FRAME_MS = 8;
/** Work that was not requested for this long does not compete with other work, ms. */
const REQUESTED_MS = 60;
/** A drag of at least this many items is heavy, such as a room with its contents. */
const MANY = 4;
/** Least pause between runs of heavy work in a heavy drag, ms: it runs in every seventh frame. */
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
