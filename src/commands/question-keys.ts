import { useEffect } from 'react';
import { rulesOf } from '../advice/walk-round.ts';
import { isTyping } from '../editor/typing.ts';
import { isIdleLetter } from '../state/letter-keys.ts';
import { QUESTIONS, sameTool } from '../state/questions.ts';
import { useAppStore } from '../state/store.ts';
import type { Tool } from '../state/tool.ts';
import { goToQuestion, pickUse } from './go-to.ts';
import { openQuestion, openStage, unfold, usePanels } from './panels.ts';

/**
 * Two digits put a thing in hand: the question's place in the walk, then the answer's place under it. "4 1" is the first
 * thing that moves air, "4 X" leads to "none here". What comes after the ninth answer has no key.
 */
export function keyFor(tool: Tool): string {
  for (const [asked, { answers }] of QUESTIONS.entries()) {
    const at = answers.findIndex((answer) => sameTool(answer.tool, tool));
    if (at >= 0) return at < 9 ? `${asked + 1} ${at + 1}` : '';
  }
  return '';
}

/** How long the second digit may be thought about, ms. */
const PAUSE_MS = 4000;

/** Listens for the digits while nothing is typed and no wall is under way. */
export function usePaletteKeys(): void {
  useEffect(() => {
    let asked: { index: number; at: number } | null = null;
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (!/^[1-9x]$/i.test(event.key) || useAppStore.getState().draft !== null || usePanels.getState().dialog) return;
      if (isIdleLetter(event)) return;
      const digit = Number(event.key) - 1;
      if (Number.isNaN(digit)) {
        if (asked && event.timeStamp - asked.at < PAUSE_MS) goToNoneHere(asked.index, event);
        // The next digit opens the next question.
        asked = null;
        return;
      }
      if (asked && event.timeStamp - asked.at < PAUSE_MS && take(asked.index, digit)) {
        asked = null;
        event.preventDefault();
        return;
      }
      const question = QUESTIONS[digit];
      if (!question) return;
      event.preventDefault();
      asked = { index: digit, at: event.timeStamp };
      openStage(question.id === 'sit' ? 'place' : 'draw');
      openQuestion(question.id);
      unfold('job');
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

/** "5 X": the keyboard comes to "none here" of the fifth question; Enter answers it. */
function goToNoneHere(questionIndex: number, event: KeyboardEvent): void {
  const question = QUESTIONS[questionIndex]?.id;
  const [rule] = question ? rulesOf(question) : [];
  if (!question || !rule) return;
  event.preventDefault();
  goToQuestion(question, rule);
}

function take(questionIndex: number, answerIndex: number): boolean {
  const answer = QUESTIONS[questionIndex]?.answers[answerIndex];
  if (!answer) return false;
  if (answer.tool.kind === 'room') pickUse(answer.tool.use);
  else useAppStore.getState().setTool(answer.tool);
  return true;
}
