/** The stage of the app in which an issue is fixed. */
export type TestStage = 'site' | 'draw' | 'place' | 'time' | 'house' | 'log' | 'read';

/** Names of the stages in which a test is corrected. */
export const TEST_STAGE_NAME: Readonly<Record<TestStage, string>> = {
  site: 'Property',
  draw: 'Draw',
  place: 'Place',
  time: 'Time',
  house: 'House',
  log: 'Log',
  read: 'Results',
};
