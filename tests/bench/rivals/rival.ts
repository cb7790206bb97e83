import type { Task } from '../task.ts';

/** One way to compute the region of a whole level with another library. */
export interface Rival {
  readonly id: string;
  /** Name in the table. */
  readonly name: string;
  /** Name of the package, for its version. */
  readonly library: string;
  /** Loads the library. Resolves to a function that converts a task to the library's types; neither is timed. */
  readonly load: () => Promise<(task: Task) => TimedRun>;
}

/** The timed part. It returns a function, not timed, that returns the area of the result, mm², and frees it. */
export type TimedRun = () => () => number;
