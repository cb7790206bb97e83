/** The one door from the app to the engine. */
export * from '../geometry/index.ts';
export * from '../geometry/units.ts';
export * from '../geometry/words.ts';
