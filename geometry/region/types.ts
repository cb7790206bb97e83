import type { ArcRing } from '../arrangement/types.ts';
import type { Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { RuleId } from '../rules/types.ts';

/** The detector that is to be placed: its size and the height of its underside. */
export interface Probe {
  readonly base: Mm;
  readonly radius: Mm;
  readonly tall: Mm;
}

/** What one rule takes away around one subject, for the axis of a probe, were it alone. */
export interface Zone {
  readonly rule: RuleId;
  readonly subject: string | null;
  /** The distance that the rule demands (before the detector's radius), mm; 0 for a stream. */
  readonly distance: Mm;
  readonly stream: boolean;
  /** Closed outlines. Several may overlap: paint them with the non-zero rule. */
  readonly outlines: readonly ArcRing[];
}

export interface RoomRegion {
  readonly room: Room;
  /** Where the axis may stand; outer boundaries positive, holes negative. Empty where nothing is allowed. */
  readonly rings: readonly ArcRing[];
  /** Square millimetres. */
  readonly area: number;
  /** Why the whole room is out, in words, where it is (use barred, no label, height out of the band); else empty. */
  readonly barred: string;
  /** The rule that bars the whole room; null where none does. */
  readonly barredBy: RuleId | null;
  /** False where it cannot be known whether a detector may stand in the room: no label, or labels that disagree. */
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
