import { withTracing } from '../../../../geometry/edit/index.ts';
import { newTracingPlace } from '../../../../geometry/edit/tracing.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { Tracing } from '../../../../geometry/plan/model.ts';
import { openStage, unfold, usePanels } from '../../../commands/panels.ts';
import { loadLateTools } from '../../../editor/tools/late-tool.ts';
import { selectLevel, selectLevelAtRest } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { toPlan } from '../../../state/viewport.ts';
import { samePlan } from '../../../storage/library-state.ts';

/** Actions on the photo or scan under the level in view. */

const FRESH = { turn: 0, opacity: 0.6, shown: true, locked: false } as const;

/** Reads a picture, puts it under the level and asks for its scale. Shows a message if it cannot be read. */
export async function layUnder(file: File): Promise<void> {
  const state = useAppStore.getState();
  const [isSame, { id: levelId }] = [samePlan(), selectLevelAtRest(state)];
  state.endChain();
  state.say(`Reading ${file.name || 'the picture'}…`);
  const { readPicture } = await import('../../../storage/picture.ts');
  const read = await readPicture(file);
  if (!read.ok) {
    state.say(read.reason);
    return;
  }
  const { remark, ...picture } = read.picture;
  const { stageSize, viewport, levelId: shown } = useAppStore.getState();
  const level = selectLevel(useAppStore.getState());
  // Reading is asynchronous: another plan or level may be shown now.
  if (!isSame() || shown !== levelId) {
    state.say('Another plan or level was opened meanwhile: the picture was not added. Add it where it belongs.');
    return;
  }
  const middle = toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
  const tracing: Tracing = {
    ...picture,
    ...FRESH,
    ...newTracingPlace(levelExtent(level), middle, picture.width, picture.height),
  };
  const replaced = level.tracing ? ' It replaced the previous one; Undo restores that.' : '';
  const refusal = state.run((plan) => withTracing(plan, level.id, tracing));
  if (refusal) return;
  openStage('draw');
  unfold('job');
  usePanels.setState({ tracingOpen: true });
  state.fit();
  // Loaded now, because the first press with the tool follows at once.
  await loadLateTools().catch(() => undefined);
  if (!isSame()) return;
  state.setTool({ kind: 'tracing', task: 'scale' });
  state.say(`${remark}${replaced} Press the two ends of a length on it that you know: that sets its scale.`);
}

/** Previews the picture at this opacity, 0 to 1; `run` with the preview commits it. */
export function showFaded(opacity: number): void {
  const state = useAppStore.getState();
  const { id, tracing } = selectLevelAtRest(state);
  if (!tracing) return;
  const edited = withTracing(state.plan, id, { ...tracing, opacity });
  state.setPreviewPlan(edited.ok && opacity !== tracing.opacity ? edited.plan : null);
}

/** Changes values of the picture, as one step of history. Returns why it was refused, in words; empty if it was done. */
export function changeTracing(patch: Partial<Tracing>): string {
  const state = useAppStore.getState();
  const { id, tracing } = selectLevel(state);
  return tracing ? state.run((plan) => withTracing(plan, id, { ...tracing, ...patch })) : '';
}

export function takeTracingAway(): void {
  const state = useAppStore.getState();
  const { id } = selectLevel(state);
  if (!state.run((plan) => withTracing(plan, id, null))) state.say('The picture is removed. Undo restores it.');
}
