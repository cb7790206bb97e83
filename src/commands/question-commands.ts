import { rulesOf } from '../advice/walk-round.ts';
import { QUESTIONS, sameTool } from '../state/questions.ts';
import { useAppStore } from '../state/store.ts';
import type { Tool } from '../state/tool.ts';
import type { Command, Target } from './command.ts';
import { goToQuestion, pickUse, showQuestion } from './go-to.ts';
import { openQuestion, openStage, unfold } from './panels.ts';
import { plainKey } from './shortcut.ts';

/** Maximum time between the two digits, ms. */
const PAUSE_MS = 4000;

/** The question that a first digit has opened, and when, ms of `event.timeStamp`. */
let asked: { readonly index: number; readonly at: number } | null = null;

const HELP = [
  {
    keys: '1 to 9',
    does: 'Open a question; then a second digit chooses the tool of that answer, X leads to "none here"',
  },
];
const nothingUnderWay = ({ state }: Target): boolean => state.previewPlan === null;

/**
 * Two digits choose a tool: the number of the question in the walk round, then the number of its answer. "4 1" is the first thing that
 * moves air, "4 X" leads to "none here".
 */
export const QUESTION_COMMANDS: readonly Command[] = [
  {
    id: 'question',
    name: 'Open a question',
    shortcuts: [plainKey('1 to 9', '1', '2', '3', '4', '5', '6', '7', '8', '9')],
    when: nothingUnderWay,
    run: (_, event) => (event ? pressDigit(Number(event.key) - 1, event.timeStamp) : false),
    help: HELP,
  },
  {
    id: 'question-none-here',
    name: 'None here',
    shortcuts: [plainKey('X')],
    when: nothingUnderWay,
    run: (_, event) => {
      const question = event && askedAt(event.timeStamp);
      // So that the next digit opens a question.
      asked = null;
      return question !== undefined && goToNoneHere(question);
    },
    help: HELP,
  },
];

/** Returns the two digits of a tool, "4 1"; empty for a tool without digits, which is an answer after the ninth. */
export function digitsOf(tool: Tool): string {
  for (const [index, { answers }] of QUESTIONS.entries()) {
    const at = answers.findIndex((answer) => sameTool(answer.tool, tool));
    if (at >= 0) return at < 9 ? `${index + 1} ${at + 1}` : '';
  }
  return '';
}

/** Returns the index of the question that still waits for its second digit; undefined for none. */
function askedAt(now: number): number | undefined {
  return asked && now - asked.at < PAUSE_MS ? asked.index : undefined;
}

function pressDigit(index: number, now: number): boolean {
  const open = askedAt(now);
  if (open !== undefined && pickAnswer(open, index)) {
    asked = null;
    return true;
  }
  const question = QUESTIONS[index];
  if (!question) return false;
  asked = { index, at: now };
  openStage(question.id === 'sit' ? 'place' : 'draw');
  openQuestion(question.id);
  unfold('job');
  showQuestion(question.id);
  return true;
}

function pickAnswer(questionIndex: number, answerIndex: number): boolean {
  const answer = QUESTIONS[questionIndex]?.answers[answerIndex];
  if (!answer) return false;
  if (answer.tool.kind === 'room') pickUse(answer.tool.use);
  else useAppStore.getState().setTool(answer.tool);
  return true;
}

/** Focuses "none here" of the question, so that Enter answers it. Returns false if the question has no such answer. */
function goToNoneHere(questionIndex: number): boolean {
  const question = QUESTIONS[questionIndex]?.id;
  const [rule] = question ? rulesOf(question) : [];
  if (!question || !rule) return false;
  goToQuestion(question, rule);
  return true;
}
