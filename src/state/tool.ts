import type { FixtureKind, OpeningKind, RoomUse } from '../../geometry/plan/model.ts';
import type { ObjectPreset } from './defaults.ts';

/** What the next press on the sheet does. */
export type Tool =
  | { readonly kind: 'select' }
  | { readonly kind: 'wall' }
  | { readonly kind: 'room-box' }
  | { readonly kind: 'opening'; readonly opening: OpeningKind }
  | { readonly kind: 'fixture'; readonly fixture: FixtureKind }
  | { readonly kind: 'object'; readonly object: ObjectPreset }
  | { readonly kind: 'room'; readonly use: RoomUse }
  | { readonly kind: 'detector' }
  /** The next press sets this item down there: a move without a drag. */
  | { readonly kind: 'move-here'; readonly id: string }
  /** Two presses on the picture under the level. */
  | { readonly kind: 'tracing'; readonly task: 'scale' | 'straighten' | 'shift' }
  /** The next press makes two of this wall. */
  | { readonly kind: 'split-wall'; readonly id: string };

export const SELECT_TOOL: Tool = { kind: 'select' };
