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
} from './plan/nouns.ts';
export { describeLost } from './words/carried.ts';
export { CAUTIONS } from './words/cautions.ts';
export {
  checkFigures,
  checkSubject,
  describeCheck,
  describeNotRun,
  describeReport,
  figureWithLimit,
  inOrder,
  notRunRules,
} from './words/check.ts';
export { describeClosing } from './words/closing.ts';
export { describeComputed, SEND_THE_PLAN } from './words/computed.ts';
export { describeEntered } from './words/entered.ts';
export { describeFurniture, moveWords } from './words/furniture.ts';
export { headlineOf } from './words/headline.ts';
export { describeInWall } from './words/in-wall.ts';
export { describeMove, towardName } from './words/move.ts';
export { describeNotice } from './words/notice.ts';
export {
  heightsRefusal,
  openingRefusal,
  sizeRefusal,
  thicknessRefusal,
} from './words/refusal.ts';
export { compassPoint } from './words/subject.ts';
export { headWord, openRules, openWords, TONE_WORD, TONES, type Tone, toneOf, worstTone } from './words/tone.ts';
export { VERDICT_WORD } from './words/verdict-word.ts';
export { wallEndNames } from './words/wall-ends.ts';
export { describeWhyNot } from './words/why-not.ts';
