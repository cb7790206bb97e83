import type { Task } from '../task.ts';

/** One way to get the region of a whole level with a library that a user could pick instead. */
export interface Rival {
  readonly id: string;
  /** As the table says it. */
  readonly name: string;
  /** The package, for its version. */
  readonly library: string;
  /** Loads the library. What comes back gets a task ready in the library's own terms; neither is timed. */
  readonly load: () => Promise<(task: Task) => TimedRun>;
}

/** The timed part. The function that it returns measures the result and lets go of it, not timed. */
export type TimedRun = () => () => number;
