import { answerFor } from '../state/questions.ts';
import { useAppStore } from '../state/store.ts';
import type { Tool } from '../state/tool.ts';
import { applies, type Command, nameOf, targetOf } from './command.ts';

type Last = { readonly tool: Tool } | { readonly command: Command };
let last: Last | null = null;

/** Records the last chosen tool for `again`. Returns the function that stops it. */
export function recordTools(): () => void {
  return useAppStore.subscribe(({ tool }, before) => {
    if (tool !== before.tool && answerFor(tool)) last = { tool };
  });
}

export function recordCommand(command: Command): void {
  if (command.repeats) last = { command };
}

/** Returns what `again` would do, in words; empty for nothing. */
export function againWords(): string {
  if (!last) return '';
  if ('tool' in last) return answerFor(last.tool)?.name.toLowerCase() ?? '';
  const target = selectedTarget();
  return applies(last.command, target) ? nameOf(last.command, target).toLowerCase() : '';
}

/** Chooses the last tool again, or runs the last command on the current selection. */
export function again(): void {
  if (!last) return;
  if ('tool' in last) useAppStore.getState().setTool(last.tool);
  else last.command.run(selectedTarget());
}

function selectedTarget() {
  const state = useAppStore.getState();
  return targetOf(state, state.selection, null);
}
