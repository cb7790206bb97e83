/** What stands beside every verdict, on screen, in files and on paper. */
export const CAUTIONS: readonly string[] = [
  'Drawn distances are as good as the tape that took them.',
  'Local codes and the instructions of the kit come first.',
  'A certified or licensed professional decides.',
  'Long-term risk needs more than one short test.',
];
