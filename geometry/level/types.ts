import type { Level, Mm, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import type { Ring } from '../plane/types.ts';

/** A piece of wall between two nodes. */
export interface WallPiece {
  /** Its wall; where walls coincide, the thickest, then the least id. */
  readonly wall: Wall;
  readonly from: XY;
  readonly to: XY;
  readonly thickness: Mm;
  /** Whether the outdoors is on one side, or `side` says so. */
  readonly outside: boolean;
  /** The piece as built: a rectangle with square ends, whatever meets it there. */
  readonly body: Ring;
}

/** The body that fills the gap between the square ends of two walls that meet, on their outer side. */
export interface WallJoint {
  /** The walls that it joins, by id; at a node of very high degree, only the thickest. */
  readonly walls: readonly Wall[];
  /** The node. */
  readonly at: XY;
  /** Whether all walls that it joins are outside walls. */
  readonly outside: boolean;
  /** A simple convex ring. */
  readonly body: Ring;
}

export interface OpeningBody {
  readonly opening: Opening;
  readonly outside: boolean;
  /** Its width along the wall by the thickness of the thickest wall there. */
  readonly body: Ring;
}

/** A bounded face of the wall center-lines. */
export interface Room {
  /** Label id, or `room@x,y` from the label point of an unlabeled room: stable while the room is not redrawn. */
  readonly key: string;
  /** The first label in the room, in file order, or null. */
  readonly label: RoomLabel | null;
  /** Every label whose point is in the room. */
  readonly labels: readonly RoomLabel[];
  /** Outer ring first, then holes; on the center-lines. */
  readonly centerRings: readonly Ring[];
  /** The floor, bounded by wall faces, without free-standing walls. One or more outer rings with holes. */
  readonly floorRings: readonly Ring[];
  /** Area of the floor, mm². */
  readonly floorArea: number;
  /** A point well inside the floor, for a label. */
  readonly labelPoint: XY;
}

/** Something about the drawing that the user should know; not a verdict. */
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
  /** Ids of the items concerned. */
  readonly ids: readonly string[];
  readonly at: XY;
  /** The length concerned, mm, or null. */
  readonly length: Mm | null;
}

/** The derived model of a level, ready for measuring. */
export interface LevelModel {
  readonly level: Level;
  readonly rooms: readonly Room[];
  readonly pieces: readonly WallPiece[];
  /** Joints that extend beyond the walls at their node; together with the pieces, everything solid. */
  readonly joints: readonly WallJoint[];
  readonly openings: readonly OpeningBody[];
  readonly notices: readonly Notice[];
}

/**
 * The center-line of a wall, or of a short piece that connects its end to another wall; `a` before `b` by x, then y.
 */
export interface CenterLine {
  readonly wall: Wall;
  readonly a: XY;
  readonly b: XY;
  /** Whether it is a wall as drawn, not a connecting piece. */
  readonly isDrawn: boolean;
  /**
   * Whether it is collinear with its wall: false only for pieces that lead straight across to a wall running alongside.
   */
  readonly isInLine: boolean;
  /**
   * The hub that it leads to. Where very many walls nearly meet, the end of one of them becomes a hub: all the others
   * are connected to it, like spokes, instead of to each other.
   */
  readonly hub?: XY;
}
