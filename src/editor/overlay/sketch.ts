import { create } from 'zustand';
import type { Detector, Opening, Shape, Wall, XY } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/plane/types.ts';

/** An opening that a press at the pointer would add. */
export interface OpeningPreview {
  readonly wall: Wall;
  readonly opening: Omit<Opening, 'id'>;
  /** Why it does not fit, in words; empty where it does. */
  readonly refusal: string;
  /** From each jamb to the corner of the room. */
  readonly offsets: readonly [Line, Line];
}

/** What is being drawn and is not in the plan yet, and what the pointer shows. On the overlay only; never stored. */
export interface Sketch {
  /** Lines to what the point snaps to. */
  readonly guides: readonly Line[];
  /** Place of the next corner of the walls that are being drawn. */
  readonly nextCorner: XY | null;
  /** Opposite inside corners of a room that is being drawn. */
  readonly box: Line | null;
  readonly previewShape: Shape | null;
  readonly previewDetector: Omit<Detector, 'id'> | null;
  readonly previewName: { readonly name: string; readonly at: XY } | null;
  readonly opening: OpeningPreview | null;
  readonly marquee: Line | null;
  /** The keyboard's cross; null while a mouse or finger is used, and while the focus is elsewhere. */
  readonly cross: XY | null;
  /** Last place of the cross, where it is shown again. */
  readonly crossPlace: XY | null;
  /** Lines from the edges of a thing that is being placed to the walls, as they would be taped. */
  readonly gaps: readonly Line[];
  /** Lengths and angles at the pointer. */
  readonly reading: readonly string[];
  /** Where the pointer is, on the plan; null off the sheet. */
  readonly pointer: XY | null;
  readonly touch: boolean;
  /** A detector whose move to a new place is being animated; null for none. */
  readonly glide: { readonly id: string; readonly at: XY } | null;
  /** The text in the length box; null while it is closed. */
  readonly typed: string | null;
  /** The text in its field for the turn of the wall; null while no turn is asked for. */
  readonly turn: string | null;
  /** The cursor over the sheet. */
  readonly cursor: string;
}

const EMPTY_SKETCH: Sketch = {
  guides: [],
  nextCorner: null,
  box: null,
  previewShape: null,
  previewDetector: null,
  previewName: null,
  opening: null,
  marquee: null,
  cross: null,
  crossPlace: null,
  gaps: [],
  reading: [],
  pointer: null,
  touch: false,
  glide: null,
  typed: null,
  turn: null,
  cursor: 'default',
};

export const useSketch = create<Sketch>()(() => EMPTY_SKETCH);

/** Clears everything that is being drawn; keeps the pointer, the cross, the cursor and a running animation. */
export function clearSketch(): void {
  const { pointer, touch, cross, crossPlace, cursor, glide } = useSketch.getState();
  useSketch.setState({ ...EMPTY_SKETCH, pointer, touch, cross, crossPlace, cursor, glide });
}

/** Shows the keyboard's cross at a point of the plan. */
export function putCross(cross: XY): void {
  useSketch.setState({ cross, crossPlace: cross });
}
