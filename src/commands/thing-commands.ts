import type { AlignTo, SpreadAlong } from '../../geometry/edit/align.ts';
import { type EditResult, turnedItem } from '../../geometry/edit/index.ts';
import type { ListedItem } from '../../geometry/edit/listed-items.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { anchorOf } from '../../geometry/snap/pick.ts';
import { putCross } from '../editor/overlay/sketch.ts';
import { refuseLocked } from '../state/locked-detectors.ts';
import { selectLevel } from '../state/selectors.ts';
import type { Command, Target } from './command.ts';
import { withLateEdits } from './late-edits.ts';
import { unfold } from './panels.ts';
import { openRowFields } from './row.ts';
import { plainKey, withCtrl } from './shortcut.ts';

/** Whether rotation changes the item: a round item looks the same at any rotation, unless it blows air to one side. */
const canTurn = (each: ListedItem): boolean =>
  (each.list === 'fixtures' && (each.item.stream !== null || !('circle' in each.item.shape))) ||
  (each.list === 'objects' && !('circle' in each.item.shape));
const eachTurned = (plan: Plan, levelId: string, things: readonly ListedItem[]): EditResult =>
  things.reduce<EditResult>((sofar, { item }) => (sofar.ok ? turnedItem(sofar.plan, levelId, item.id, 90) : sofar), {
    ok: true,
    plan,
  });
const standing = ({ found }: Target): number =>
  found.filter(({ list }) => list === 'fixtures' || list === 'objects' || list === 'detectors').length;
const idsOf = ({ found }: Target): readonly string[] => found.map(({ item }) => item.id);
const run = (target: Target, edit: (plan: Plan, levelId: string) => EditResult): void => {
  const { state } = target;
  if (refuseLocked(state, idsOf(target))) return;
  const levelId = selectLevel(state).id;
  state.run((plan) => edit(plan, levelId));
};

const lineUp = (to: AlignTo, name: string): Command => ({
  id: `line-up-${to}`,
  section: 'line',
  name,
  when: (target) => standing(target) > 1,
  run: (target) =>
    withLateEdits('lines', ({ alignedItems }) =>
      run(target, (plan, levelId) => alignedItems(plan, levelId, idsOf(target), to)),
    ),
  repeats: true,
});
const spread = (along: SpreadAlong, name: string): Command => ({
  id: `spread-${along}`,
  section: 'line',
  name,
  when: (target) => standing(target) > 2,
  run: (target) =>
    withLateEdits('lines', ({ spreadItems }) =>
      run(target, (plan, levelId) => spreadItems(plan, levelId, idsOf(target), along)),
    ),
  repeats: true,
});
/** Commands on selected or pressed items of any kind. */
export const THING_COMMANDS: readonly Command[] = [
  {
    id: 'move-here',
    section: 'move',
    name: ({ one }) => (one ? 'Press where it goes' : 'Press where they go'),
    shortcuts: [plainKey('M')],
    help: [{ keys: 'M', does: 'Move what is selected by a press, not a drag' }],
    when: ({ found }) => found.length > 0,
    run: ({ state, found }) => {
      const [first] = found;
      const ids = found.map(({ item }) => item.id);
      if (!first || refuseLocked(state, ids)) return;
      const cross = anchorOf(selectLevel(state), first.item.id);
      state.setTool({ kind: 'move-here', ids });
      if (cross) putCross(cross);
    },
    // For a detector this button is shown under its verdict.
    inPanel: ({ one }) => one?.list !== 'detectors',
  },
  {
    id: 'grip',
    section: 'move',
    name: 'Change its shape by two presses',
    when: ({ one }) => one !== null && one.list !== 'rooms' && one.list !== 'detectors',
    run: ({ state, one }) => one && state.setTool({ kind: 'grip', id: one.item.id }),
  },
  {
    id: 'turn',
    section: 'move',
    name: 'Turn by a right angle',
    shortcuts: [plainKey('R')],
    help: [{ keys: 'R', does: 'Turn what is selected by a right angle' }],
    when: ({ found }) => found.some(canTurn),
    run: (target) => run(target, (plan, levelId) => eachTurned(plan, levelId, target.found.filter(canTurn))),
    repeats: true,
  },
  lineUp('left', 'Align left edges'),
  lineUp('right', 'Align right edges'),
  lineUp('upper', 'Align upper edges'),
  lineUp('lower', 'Align lower edges'),
  lineUp('column', 'Center vertically in line'),
  lineUp('row', 'Center horizontally in line'),
  spread('across', 'Distribute from left to right'),
  spread('down', 'Distribute down the page'),
  {
    id: 'duplicate',
    section: 'copy',
    name: 'Duplicate',
    shortcuts: [withCtrl('d')],
    help: [{ keys: 'Ctrl + D', does: 'Duplicate what is selected' }],
    when: ({ found }) => found.length > 0,
    run: () => withLateEdits('copies', ({ duplicateSelection }) => duplicateSelection()),
    inPanel: () => true,
    repeats: true,
  },
  {
    id: 'row',
    section: 'copy',
    name: 'Duplicate in a row…',
    when: ({ found }) => found.some(({ list }) => list !== 'rooms'),
    run: () => {
      unfold('side');
      openRowFields();
    },
  },
];
