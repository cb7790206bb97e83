/** Our own mistake, never the user's: throws. Nobody catches it but the last guard of the app. */
export function assert(fact: boolean, message: string): asserts fact {
  if (!fact) throw new Error(message);
}
