/** Sentences about verdicts, checks, moves and notices: the same text on screen, on paper and on the command line. */

export {
  capital,
  counted,
  FIXTURE_NOUN,
  GROUND_PHRASE,
  LIVING_PHRASE,
  listed,
  PURPOSE_PHRASE,
  ROOM_USE_NOUN,
} from '../plan/nouns.ts';
export { describeBlocked } from './blocking-checks.ts';
export {
  checkFigures,
  checkSubject,
  checksInOrder,
  describeCheck,
  describeNotRun,
  describeReport,
  figureWithLimit,
  notRunRules,
} from './check.ts';
export { describeClosing } from './closing.ts';
export { describeComputed, SEND_THE_PLAN } from './computed.ts';
export { cornerWords } from './corner-words.ts';
export { describeFurniture, describeFurnitureMove } from './furniture.ts';
export { ALONG_PAGE, gapRefusal, WALL_ON } from './gap-refusal.ts';
export { CAUTIONS, headlineOf } from './headline.ts';
export { describeInWall } from './in-wall.ts';
export { describeWay, towardName } from './move.ts';
export { describeNotice } from './notice.ts';
export { changeWord, insteadOf, overrideRefusal, overrideWord } from './override.ts';
export {
  heightsRefusal,
  openingRefusal,
  sizeRefusal,
  thicknessRefusal,
} from './refusal.ts';
export { compassPoint, wallEndNames } from './subject.ts';
export { describeSupportLost } from './support-lost.ts';
export { describeOpenRules, headlineText, openRules, TONE_WORD, TONES, type Tone, toneOf, worstTone } from './tone.ts';
