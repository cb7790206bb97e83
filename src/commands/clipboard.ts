import { clipOf, pastedItems, pasteOffset } from '../../geometry/edit/index.ts';
import { levelExtent } from '../../geometry/level/level-extent.ts';
import { counted } from '../../geometry/messages/index.ts';
import type { Level, XY } from '../../geometry/plan/model.ts';
import { readClip, writeClip } from '../../geometry/planfile/clip.ts';
import { steps } from '../editor/tools/tool-context.ts';
import { COPY_OFFSET } from '../state/item-actions.ts';
import { selectLevel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import { toScreen } from '../state/viewport.ts';
import { samePlan } from '../storage/library-state.ts';

/** The last copy of this tab, used if the page may not read the system's clipboard. */
let lastCopy = '';
/** Whether the last copy did not reach the system's clipboard, whose content is then older. */
let isTabOnly = false;

/** Returns the selection as text; empty, with a message that says why, if nothing of it can be copied. */
export function copied(): string {
  const state = useAppStore.getState();
  const level = selectLevel(state);
  const clip = clipOf(level, state.selection);
  const count = thingsIn(clip);
  if (count === 0) {
    if (state.selection.length > 0) state.say('A door or a window goes with its wall. Select the wall, then copy.');
    return '';
  }
  lastCopy = writeClip(clip);
  isTabOnly = true;
  const alone = level.openings.filter(
    ({ id, wall }) => state.selection.includes(id) && !state.selection.includes(wall),
  );
  const without = alone.length > 0 ? ' Doors and windows go with their walls only.' : '';
  state.say(`Copied: ${counted(count, 'thing')}.${without} Paste on any level, in any plan, in another tab.`);
  return lastCopy;
}

/** Call it when the text has reached the system's clipboard. */
export function reachedSystem(): void {
  isTabOnly = false;
}

/**
 * Copies the selection by a button. If the browser denies the system's clipboard, the copy can be pasted in this tab only. Returns whether
 * anything was copied.
 */
export async function copySelection(): Promise<boolean> {
  const text = copied();
  if (!text) return false;
  try {
    await navigator.clipboard.writeText(text);
    reachedSystem();
  } catch {
    useAppStore.getState().say('Copied, for this tab alone: the browser keeps the clipboard closed to this page.');
  }
  return true;
}

/** Pastes by a button at `at`, mm; see `copySelection`. */
export async function pasteByButton(at: XY | null): Promise<void> {
  const isSame = samePlan();
  const text = isTabOnly ? lastCopy : await navigator.clipboard.readText().catch(() => lastCopy);
  if (isSame()) paste(text, at);
}

/** Pastes the items of a text on the level in view, as one step of history, and selects them. Shows a message if the text holds none. */
export function paste(text: string, at: XY | null): void {
  const read = readClip(text);
  const usable = !read.ok && isTabOnly ? readClip(lastCopy) : read;
  const state = useAppStore.getState();
  if (!usable.ok) {
    state.say(usable.reason);
    return;
  }
  const { clip } = usable;
  // A run of walls that is being drawn ends first: it stays in the plan, as a separate step of history.
  if (state.tool.kind !== 'select') state.setTool(SELECT_TOOL);
  state.endChain();
  const { plan } = useAppStore.getState();
  const levelId = selectLevel(state).id;
  const [dx, dy] = pasteOffset(plan, levelId, clip, at, COPY_OFFSET);
  const by: XY = at ? [wholeSteps(dx), wholeSteps(dy)] : [dx, dy];
  const copies = pastedItems(plan, levelId, clip, by);
  if (state.run(() => copies) || !copies.ok) return;
  state.select(copies.ids);
  if (!isInView(clip, by)) state.fit();
  state.say(`Pasted: ${counted(thingsIn(clip), 'thing')}.`);
}

function wholeSteps(mm: number): number {
  const { grid } = steps();
  return Math.round(mm / grid) * grid;
}

function thingsIn({ walls, rooms, fixtures, objects, detectors }: Level): number {
  return walls.length + rooms.length + fixtures.length + objects.length + detectors.length;
}

/** Whether the middle of the pasted items is in view. */
function isInView(clip: Level, by: XY): boolean {
  const extent = levelExtent(clip);
  const { viewport, stageSize } = useAppStore.getState();
  if (!extent) return true;
  const middle: XY = [(extent.minX + extent.maxX) / 2 + by[0], (extent.minY + extent.maxY) / 2 + by[1]];
  const [x, y] = toScreen(viewport, middle);
  return x >= 0 && y >= 0 && x <= stageSize.width && y <= stageSize.height;
}
