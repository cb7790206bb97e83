/** Pure edits of a plan. Inputs are never changed; what an edit does not touch keeps its identity, so that caches by identity work. */

export { type AlignTo, alignedItems, type SpreadAlong, spreadItems } from './edit/align.ts';
export {
  type Look,
  withAnswersWithdrawn,
  withLiving,
  withLooksSigned,
  withNoneHere,
  withPurpose,
} from './edit/answers.ts';
export { checkedPlan, type EditResult } from './edit/checked.ts';
export { wallsCopied } from './edit/copy-walls.ts';
export { duplicatedItems } from './edit/duplicate.ts';
export { itemPatched, nextId, withDetectorAt, withItem, withItems } from './edit/item.ts';
export { levelChanged, withLevel, withNewLevel, withoutLevel } from './edit/level.ts';
export { movedItems, withWallEnds } from './edit/move.ts';
export {
  type Beside,
  levelBelow,
  levelsBeside,
  levelsInOrder,
  withLevelBeside,
  withLevelLevelWith,
  withLevelMoved,
  withOrdersFromZero,
} from './edit/order.ts';
export { clipOf, pastedItems, pasteOffset } from './edit/paste.ts';
export { withPlan, withSite } from './edit/plan.ts';
export { withoutItems } from './edit/remove.ts';
export { itemsInRow, type Row } from './edit/row.ts';
export { withoutTracings, withTracing } from './edit/tracing.ts';
export { resizedItem, turnedItem } from './edit/turn.ts';
export { itemById, itemName } from './items.ts';
export { ITEM_KINDS, type Item, type ItemKind, itemsOf, LIST_OF } from './kinds.ts';
