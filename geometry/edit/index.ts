/**
 * Pure edits of a plan. Inputs are not mutated, and unchanged parts keep their identity, so that memoization by
 * identity works.
 */

export { itemById, itemName } from '../plan/items.ts';
export { ITEM_KINDS, type Item, itemsOf } from '../plan/kinds.ts';
export {
  type Look,
  withCeiling,
  withGround,
  withLiving,
  withLooksSigned,
  withNoneHere,
  withoutNoneHere,
  withPurpose,
} from './answers.ts';
export { checkedPlan, type EditResult } from './checked.ts';
export { wallsCopied } from './copy-walls.ts';
export { duplicatedItems } from './duplicate.ts';
export { nextId } from './free-id.ts';
export { itemPatched, withDetectorAt, withItem, withItems, withoutItems } from './item.ts';
export { checkedLevelEdit, withLevel, withNewLevel, withoutLevel } from './level.ts';
export { movedItems, withWallEnds } from './move.ts';
export {
  type Beside,
  levelBelow,
  levelsBeside,
  levelsInOrder,
  withLevelAtHeightOf,
  withLevelBeside,
  withLevelMoved,
  withOrdersFromZero,
} from './order.ts';
export { clipOf, pastedItems, pasteOffset } from './paste.ts';
export { withoutTracings, withPlan, withSite } from './plan.ts';
export { withTracing } from './tracing.ts';
export { resizedItem, turnedItem } from './turn.ts';
export { type UnmeasuredHeights, unmeasuredHeights } from './unmeasured.ts';
