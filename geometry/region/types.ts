import type { ArcRing } from '../arrangement/types.ts';
import type { Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { Ring } from '../plane/types.ts';
import type { RuleId } from '../rules/types.ts';

/** The detector to be placed: its size and base height. */
export interface Probe {
  readonly base: Mm;
  readonly radius: Mm;
  readonly tall: Mm;
}

/** The area that one rule excludes around one subject for the axis of a probe. */
export interface Zone {
  readonly rule: RuleId;
  readonly subject: string | null;
  /** The distance that the rule requires (without the detector's radius), mm; 0 for a subject that the detector must only stay out of. */
  readonly distance: Mm;
  /** Whether the detector must stay out of the subject and keeps no distance, as for an air stream. */
  readonly keepOut: boolean;
  /** Closed outlines that may overlap: fill them with the non-zero rule. */
  readonly outlines: readonly ArcRing[];
  /** The outlines as flat pieces (`arrangement/pieces.ts`), if already computed. */
  readonly pieces?: Float64Array | undefined;
  /** The floor in direct sun that the zone surrounds; absent for any other subject. */
  readonly sunlit?: Ring;
}

export interface RoomRegion {
  readonly room: Room;
  /** Where the axis may be; outer boundaries positive, holes negative. Empty where nothing is allowed. */
  readonly rings: readonly ArcRing[];
  /** In mm². */
  readonly area: number;
  /** Why the whole room is excluded, in words (use barred, no label, height out of the band); else "". */
  readonly barred: string;
  /** The rule that excludes the whole room; null for none. */
  readonly barredBy: RuleId | null;
  /** False if it cannot be decided whether a detector may be in the room: no label, or labels that disagree. */
  readonly decided: boolean;
}

export interface LevelRegion {
  readonly probe: Probe;
  readonly rooms: readonly RoomRegion[];
  readonly zones: readonly Zone[];
}

export interface NearestSpot {
  readonly at: XY;
  readonly room: Room;
  /** How far to move, mm. */
  readonly distance: Mm;
  /** Clockwise on screen from +x, degrees. */
  readonly direction: number;
}
