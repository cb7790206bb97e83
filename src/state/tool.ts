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
  /** The next press moves these items there, the first with its middle on the point: a move without a drag. */
  | { readonly kind: 'move-here'; readonly ids: readonly string[] }
  /** A press picks a handle of this item, the next one drops it: a reshape without a drag. */
  | { readonly kind: 'grip'; readonly id: string }
  /** Two presses are the corners of a frame: what lies in it is selected. */
  | { readonly kind: 'frame' }
  /** The next press brings its point to the middle of the stage: a pan without a drag. */
  | { readonly kind: 'center' }
  /** Shows for any spot why no detector may be placed there. */
  | { readonly kind: 'ask' }
  /** Changes the picture under the level: by two presses each, or (`move`) by drags and arrow keys. */
  | { readonly kind: 'tracing'; readonly task: 'scale' | 'straighten' | 'shift' | 'move' }
  /** The next press splits this wall. */
  | { readonly kind: 'split-wall'; readonly id: string };

export const SELECT_TOOL: Tool = { kind: 'select' };
