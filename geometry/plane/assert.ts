/**
 * Throws when an invariant of our own code is broken; never used to check user input. Only the app's top-level
 * error boundary catches it.
 */
export function assert(fact: boolean, message: string): asserts fact {
  if (!fact) throw new Error(message);
}
