/** The one door from the app to the engine. What is not there yet is stood in for by `engine-standins.ts`. */
export * from './engine-standins.ts';
