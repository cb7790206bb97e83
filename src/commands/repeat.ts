import { answerFor } from '../state/questions.ts';
import { useAppStore } from '../state/store.ts';
import type { Tool } from '../state/tool.ts';
import { type Act, nameOf, placeOf } from './command.ts';

type Last = { readonly tool: Tool } | { readonly act: Act };
let last: Last | null = null;

/** Follows what comes into hand; answers what ends that. */
export function rememberTools(): () => void {
  return useAppStore.subscribe(({ tool }, before) => {
    if (tool !== before.tool && answerFor(tool)) last = { tool };
  });
}

export function rememberAct(act: Act): void {
  if (act.repeats) last = { act };
}

/** What "again" would do, in words; empty for nothing. */
export function againWords(): string {
  if (!last) return '';
  if ('tool' in last) return answerFor(last.tool)?.name.toLowerCase() ?? '';
  const place = selectedPlace();
  return last.act.applies(place) ? nameOf(last.act, place).toLowerCase() : '';
}

/** The last thing comes into hand again, or the last act is done with what is selected now. */
export function again(): void {
  if (!last) return;
  if ('tool' in last) useAppStore.getState().setTool(last.tool);
  else last.act.run(selectedPlace());
}

function selectedPlace() {
  const state = useAppStore.getState();
  return placeOf(state, state.selection, null);
}
