import type { Level, Mm, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import type { Ring } from '../plane/types.ts';

/** A piece of wall between two junctions. */
export interface WallPiece {
  /** The wall that it belongs to; where walls overlap, the thickest, then the first id. */
  readonly wall: Wall;
  readonly from: XY;
  readonly to: XY;
  readonly thickness: Mm;
  /** Whether the outdoors lies on one side, or `side` says so. */
  readonly outside: boolean;
  /** The piece as built: a rectangle, square at both ends, whatever meets it there. */
  readonly body: Ring;
}

/** What fills the gap between the square ends of two walls that meet, on their outer side. */
export interface WallJoint {
  /** The walls that it joins, by id; of very many at one place, the thickest. */
  readonly walls: readonly Wall[];
  /** The node. */
  readonly at: XY;
  /** Whether all that it joins is outside wall. */
  readonly outside: boolean;
  /** A simple convex ring. */
  readonly body: Ring;
}

export interface OpeningBody {
  readonly opening: Opening;
  readonly outside: boolean;
  /** Width along the wall by the thickness of the thickest wall that runs there. */
  readonly body: Ring;
}

/** A bounded face of the wall centre-lines. */
export interface Room {
  /** Label id, or `room@x,y` from the label point of an unlabelled room: stable while the room is not redrawn. */
  readonly key: string;
  /** The first label in the room, in file order; null when it has none. */
  readonly label: RoomLabel | null;
  /** Every label whose point lies in the room. */
  readonly labels: readonly RoomLabel[];
  /** Outer ring first, then holes; on the centre-lines. */
  readonly centreRings: readonly Ring[];
  /** The floor: set back to the wall faces, free-standing loops and stubs cut out. One or more outer rings with holes. */
  readonly floorRings: readonly Ring[];
  /** Square millimetres of floor. */
  readonly floorArea: number;
  /** A point well inside the floor, for a name. */
  readonly labelPoint: XY;
}

/** Something about the drawing that the user should know; never a verdict. */
export interface Notice {
  readonly kind:
    | 'gap-closed'
    | 'gap-open'
    | 'overshoot'
    | 'walls-overlap'
    | 'walls-crowded'
    | 'zero-length-wall'
    | 'label-outside-rooms'
    | 'labels-share-room'
    | 'open-passage-outside'
    | 'unlabelled-room';
  /** Ids of what it concerns. */
  readonly ids: readonly string[];
  readonly at: XY;
  /** The length in question, mm; null when there is none. */
  readonly length: Mm | null;
}

/** A level made ready to be measured. */
export interface LevelModel {
  readonly level: Level;
  readonly rooms: readonly Room[];
  readonly pieces: readonly WallPiece[];
  /** Joints that stand out from the walls at their node; with the pieces, all that stands. */
  readonly joints: readonly WallJoint[];
  readonly openings: readonly OpeningBody[];
  readonly notices: readonly Notice[];
}
