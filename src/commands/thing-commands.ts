import {
  type AlignTo,
  alignedItems,
  type EditResult,
  type SpreadAlong,
  spreadItems,
  turnedItem,
} from '../../geometry/edit/index.ts';
import { OPENING_NOUN } from '../../geometry/messages/index.ts';
import type { OpeningKind, Plan } from '../../geometry/plan/model.ts';
import { anchorOf } from '../../geometry/snap/pick.ts';
import { useSketch } from '../editor/sketch.ts';
import { createOpeningTool } from '../editor/tools/opening-tool.ts';
import { pressAt } from '../editor/tools/tool-context.ts';
import type { FoundItem } from '../state/plan-edits.ts';
import { selectLevel, selectReports } from '../state/selectors.ts';
import type { Act, ActPlace } from './command.ts';
import { unfold } from './panels.ts';
import { askForRow } from './row.ts';

/** A round thing looks the same however it is turned, unless it throws its air to one side. */
const canTurn = (each: FoundItem): boolean =>
  (each.list === 'fixtures' && (each.item.stream !== null || !('circle' in each.item.shape))) ||
  (each.list === 'objects' && !('circle' in each.item.shape));
const eachTurned = (plan: Plan, levelId: string, things: readonly FoundItem[]): EditResult =>
  things.reduce<EditResult>((sofar, { item }) => (sofar.ok ? turnedItem(sofar.plan, levelId, item.id, 90) : sofar), {
    ok: true,
    plan,
  });
const standing = ({ found }: ActPlace): number =>
  found.filter(({ list }) => list === 'fixtures' || list === 'objects' || list === 'detectors').length;
const idsOf = ({ found }: ActPlace): readonly string[] => found.map(({ item }) => item.id);
const run = ({ state }: ActPlace, edit: (plan: Plan, levelId: string) => EditResult): void => {
  const levelId = selectLevel(state).id;
  state.run((plan) => edit(plan, levelId));
};

const lineUp = (to: AlignTo, name: string): Act => ({
  id: `line-up-${to}`,
  group: 'line',
  name,
  applies: (place) => standing(place) > 1,
  run: (place) => run(place, (plan, levelId) => alignedItems(plan, levelId, idsOf(place), to)),
  repeats: true,
});
const spread = (along: SpreadAlong, name: string): Act => ({
  id: `spread-${along}`,
  group: 'line',
  name,
  applies: (place) => standing(place) > 2,
  run: (place) => run(place, (plan, levelId) => spreadItems(plan, levelId, idsOf(place), along)),
  repeats: true,
});
const openingHere = (kind: OpeningKind): Act => ({
  id: `${kind}-here`,
  group: 'here',
  name: `Put a ${OPENING_NOUN[kind]} in here`,
  applies: ({ one, at }) => one?.list === 'walls' && at !== null,
  run: ({ at }) => {
    if (at) createOpeningTool(kind).up(pressAt(at));
  },
});

/** What can be done with what is selected or pressed. Acts of walls alone have a file of their own. */
export const THING_ACTS: readonly Act[] = [
  openingHere('door'),
  openingHere('window'),
  openingHere('passage'),
  {
    id: 'nearest',
    group: 'here',
    name: 'Move it to the nearest clear spot',
    applies: ({ state, one }) =>
      one?.list === 'detectors' &&
      selectReports(state).some(({ id, verdict }) => id === one.item.id && verdict !== 'clear'),
    run: ({ state, one }) => one && state.moveToNearest(one.item.id),
  },
  {
    id: 'move-here',
    group: 'move',
    name: ({ one }) => (one ? 'Press where it goes' : 'Press where they go'),
    does: 'Move what is selected by a press, not a drag',
    key: { shown: 'M', press: 'm' },
    applies: ({ found }) => found.length > 0,
    run: ({ state, found }) => {
      const [first] = found;
      if (!first) return;
      const cross = anchorOf(selectLevel(state), first.item.id);
      state.setTool({ kind: 'move-here', ids: found.map(({ item }) => item.id) });
      useSketch.setState({ cross });
    },
    // A detector has this button under its verdict.
    onPanel: ({ one }) => one?.list !== 'detectors',
  },
  {
    id: 'grip',
    group: 'move',
    name: 'Change its shape by two presses',
    applies: ({ one }) => one !== null && one.list !== 'rooms' && one.list !== 'detectors',
    run: ({ state, one }) => one && state.setTool({ kind: 'grip', id: one.item.id }),
  },
  {
    id: 'turn',
    group: 'move',
    name: 'Turn by a right angle',
    does: 'Turn what is selected by a right angle',
    key: { shown: 'R', press: 'r' },
    applies: ({ found }) => found.some(canTurn),
    run: (place) => run(place, (plan, levelId) => eachTurned(plan, levelId, place.found.filter(canTurn))),
    repeats: true,
  },
  lineUp('left', 'Left edges in line'),
  lineUp('right', 'Right edges in line'),
  lineUp('upper', 'Upper edges in line'),
  lineUp('lower', 'Lower edges in line'),
  lineUp('column', 'Middles one under the other'),
  lineUp('row', 'Middles side by side'),
  spread('across', 'Spread evenly from left to right'),
  spread('down', 'Spread evenly down the page'),
  {
    id: 'duplicate',
    group: 'copy',
    name: 'Duplicate',
    does: 'Duplicate what is selected',
    key: { shown: 'Ctrl + D', press: 'd', ctrl: true },
    applies: ({ found }) => found.length > 0,
    run: ({ state }) => state.duplicateSelection(),
    onPanel: () => true,
    repeats: true,
  },
  {
    id: 'row',
    group: 'copy',
    name: 'Duplicate in a row…',
    applies: ({ found }) => found.some(({ list }) => list !== 'rooms'),
    run: () => {
      unfold('side');
      askForRow();
    },
  },
  {
    id: 'delete',
    group: 'delete',
    name: 'Delete',
    does: 'Delete what is selected',
    key: { shown: 'Delete', press: 'delete', also: 'backspace' },
    applies: ({ found }) => found.length > 0,
    run: ({ state }) => state.deleteSelection(),
    onPanel: () => true,
  },
];
