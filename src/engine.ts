/** The one door from the app to the engine. */
export * from '../geometry/index.ts';
export * from '../geometry/messages/index.ts';
export * from '../geometry/units/index.ts';
