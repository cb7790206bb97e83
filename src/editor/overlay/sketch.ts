import { create } from 'zustand';
import type { Detector, Opening, Shape, Wall, XY } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/plane/types.ts';

/** An opening that would be put in where the pointer is. */
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
  /** Where the next corner of the walls that are being drawn would go. */
  readonly nextCorner: XY | null;
  /** Opposite inside corners of a room that is being drawn. */
  readonly box: Line | null;
  readonly previewShape: Shape | null;
  readonly previewDetector: Omit<Detector, 'id'> | null;
  readonly previewName: { readonly name: string; readonly at: XY } | null;
  readonly opening: OpeningPreview | null;
  readonly marquee: Line | null;
  /** The keyboard's cross; null while a mouse or finger is used, and while the keyboard is elsewhere. */
  readonly cross: XY | null;
  /** Where the cross was last: it comes back there. */
  readonly crossPlace: XY | null;
  /** From the edges of a thing that is being placed to the walls: what one would tape. */
  readonly gaps: readonly Line[];
  /** Lengths and angles at the pointer. */
  readonly reading: readonly string[];
  /** Where the pointer is, on the plan; null off the sheet. */
  readonly pointer: XY | null;
  readonly touch: boolean;
  /** A detector on its way to where a button has put it. */
  readonly glide: { readonly id: string; readonly at: XY } | null;
  /** What is typed into the length box; null while it is shut. */
  readonly typed: string | null;
  /** What is typed beside it of how far the wall turns off; null while no turn is asked for. */
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

/** Removes all that was under way; the pointer stays where it is. */
export function clearSketch(): void {
  const { pointer, touch, cross, crossPlace, cursor, glide } = useSketch.getState();
  useSketch.setState({ ...EMPTY_SKETCH, pointer, touch, cross, crossPlace, cursor, glide });
}

/** Shows the keyboard's cross at a point of the plan. */
export function putCross(cross: XY): void {
  useSketch.setState({ cross, crossPlace: cross });
}
