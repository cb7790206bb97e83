/** Sentences about verdicts, checks, moves and notices: the same words on screen, on the sheet and on the command line. */

export {
  capital,
  counted,
  FIXTURE_NOUN,
  GROUND_PHRASE,
  LIVING_PHRASE,
  listed,
  OPENING_NOUN,
  PURPOSE_PHRASE,
  ROOM_USE_NOUN,
} from '../plan/nouns.ts';
export { describeBlocked } from './blocking-checks.ts';
export { describeLost } from './carried.ts';
export { CAUTIONS } from './cautions.ts';
export {
  checkFigures,
  checkSubject,
  describeCheck,
  describeNotRun,
  describeReport,
  figureWithLimit,
  inOrder,
  notRunRules,
} from './check.ts';
export { describeClosing } from './closing.ts';
export { describeCollision } from './collision.ts';
export { describeComputed, SEND_THE_PLAN } from './computed.ts';
export { describeFurniture, moveWords } from './furniture.ts';
export { headlineOf } from './headline.ts';
export { describeInWall } from './in-wall.ts';
export { describeMove, towardName } from './move.ts';
export { describeNotice } from './notice.ts';
export {
  heightsRefusal,
  openingRefusal,
  sizeRefusal,
  thicknessRefusal,
} from './refusal.ts';
export { compassPoint } from './subject.ts';
export { headWord, openRules, openWords, TONE_WORD, TONES, type Tone, toneOf, worstTone } from './tone.ts';
export { VERDICT_WORD } from './verdict-word.ts';
export { wallEndNames } from './wall-ends.ts';
