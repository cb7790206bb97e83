/**
 * Throws when an invariant of our own code is broken; never used on what the user entered. Only the app's top-level
 * error boundary catches it.
 */
export function assert(fact: boolean, message: string): asserts fact {
  if (!fact) throw new Error(message);
}
