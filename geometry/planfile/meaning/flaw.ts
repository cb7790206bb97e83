import type { Step } from '../pointer.ts';

/** Something that has the right shape and makes no sense. The reader adds the place and the thing, the editor the thing. */
export interface Flaw {
  /** From the thing that is looked at to the place. */
  readonly path: readonly Step[];
  readonly found: string;
  readonly expected: string;
  /** The rest of a sentence that begins with the thing: "reaches 4 in past the end of its wall. Slide it back …". */
  readonly says: string;
}
