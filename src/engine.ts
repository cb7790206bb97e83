/** The one door from the app to the engine. What has not landed there yet is stood in for by `engine-standins.ts`. */
export * from '../geometry/index.ts';
export * from '../geometry/units.ts';
export * from '../geometry/words.ts';
export { emptyLevel, emptyPlan } from './engine-standins.ts';
