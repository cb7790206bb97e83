import { type TypedEnd, wallAtPoint } from '../../../geometry/edit/wall-run.ts';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { nearMiss } from '../../../geometry/snap/closing.ts';
import { formatMeasured, parseLength } from '../../../geometry/units/index.ts';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';
import { closeOutline } from '../../state/close-wall-chain.ts';
import { withCorner } from '../../state/wall-chain.ts';
import { askForWall } from '../lengths/set-out.ts';
import { clearSketch, putCross, useSketch } from '../overlay/sketch.ts';
import { keepInView } from '../stage/keep-in-view.ts';
import { currentLevel, returnToSelect, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';
import { type Corner, cornerAt, corners, typedEnd, wallReadings } from './wall-corner.ts';
import type { WallDirection } from './wall-direction.ts';

/** State of the wall tool beside the chain in the store. */
export interface WallGesture {
  readonly direction: WallDirection;
  /** Where the pointer was last; null before it came, and after the keyboard has set a corner. */
  pointer: ToolPoint | null;
}

/** Shows the wall that would be added with the pointer at a corner; `null`: where only a typed length or an arrow key shows it. */
export function showNextWall({ direction }: WallGesture, corner: Corner | null): void {
  const pointed = corner?.at ?? null;
  const next = nextCorner(direction, pointed);
  useSketch.setState({
    nextCorner: next,
    guides: corner?.guides ?? [],
    gaps: corner?.taped ?? [],
    reading: next && useSketch.getState().typed === null ? readingAt(direction, next, pointed) : [],
  });
}

/** The next corner: at the length that stands in the box, in the direction that an arrow or a turn gives; else at the pointer. */
function nextCorner(direction: WallDirection, pointed: XY | null): XY | null {
  const points = corners();
  const from = points.at(-1);
  const { typed, turn } = useSketch.getState();
  const read = typed === null ? null : parseLength(typed, store().plan.display.length);
  const toward = direction.toward(points, pointed);
  if (!from || !toward) return pointed;
  if (read?.ok && read.mm > 0) return typedEnd(points, toward, read.mm).at;
  const atCorner = direction.byArrow() && pointed && distance(pointed, from) < 1;
  return turn || typed !== null || atCorner ? toward : pointed;
}

function readingAt(direction: WallDirection, next: XY, pointed: XY | null): readonly string[] {
  const byArrow = direction.byArrow() && pointed !== null && distance(pointed, next) > 1;
  return byArrow ? ['Type how long the wall is'] : wallReadings(corners(), next);
}

/** Puts the walls of the chain on the level and asks for their lengths. */
export function endWalls(): void {
  const before = new Set(currentLevel().walls.map(({ id }) => id));
  store().endChain();
  clearSketch();
  const drawn = currentLevel().walls.filter(({ id }) => !before.has(id));
  askForWall(new Set(drawn.map(({ id }) => id)));
}

/** Sets a corner. On the start of the chain it closes the outline, on the corner before it ends the chain; `keeps`: the tool stays then. */
export function addCorner(gesture: WallGesture, at: XY, keeps: boolean): void {
  const points = corners();
  const [start] = points;
  const before = points.at(-1);
  if (start && points.length > 2 && distance(start, at) < 1) {
    if (!closeOutline(points)) return;
    clearSketch();
    if (!keeps) returnToSelect();
    return;
  }
  if (before && distance(before, at) < 1) {
    restAfterWalls(keeps);
    return;
  }
  store().setChain(withCorner(store().chain, at));
  gesture.direction.reset();
  if (useSketch.getState().cross) startCrossAt(gesture, at);
  if (nearMiss(corners())) store().say('');
  // A wall that reaches another one is done.
  if (points.length > 0 && wallAtPoint(currentLevel(), at)) restAfterWalls(keeps);
  else showNextWall(gesture, null);
}

/** The walls are done. Unless the tool is kept, the next press selects: one on a length would begin a stray wall. */
function restAfterWalls(keeps: boolean): void {
  endWalls();
  if (!keeps) returnToSelect();
}

/** The next arrow key starts from the corner that was set. */
function startCrossAt(gesture: WallGesture, at: XY): void {
  putCross(at);
  keepInView(at);
  gesture.pointer = null;
}

/** Sets the next corner, or by finger moves the last one, to the typed length and turn. Returns why not, in words; empty when it did. */
export function setTypedLength(gesture: WallGesture, text: string): string {
  const { turn, touch } = useSketch.getState();
  const read = parseLength(text, store().plan.display.length);
  if (!read.ok) return read.message;
  if (read.mm <= 0) return 'A wall has some length. Write more than 0.';
  const turned = turn ? parseTurn(turn) : null;
  if (turned && !turned.ok) return turned.message;
  const points = corners();
  const from = points.at(-1);
  const before = points.at(-2);
  const toward = touch && before && turn ? null : gesture.direction.toward(points, shownCorner(gesture));
  if (from && toward && distance(from, toward) >= 1) {
    const end = typedEnd(points, toward, read.mm);
    addCorner(gesture, end.at, false);
    sayWhereReached(end, read.mm);
    return '';
  }
  // By finger the corner is set already: its wall is made as long, and turned as far, as was typed.
  if (!from || !before)
    return 'Show the direction first: move the pointer to where the wall goes, or press an arrow key.';
  const rest = points.slice(0, -1);
  const aside = turn ? gesture.direction.toward(rest, from) : from;
  store().setChain({ corners: [...rest, typedEnd(rest, aside ?? from, read.mm).at], takenBack: [] });
  showNextWall(gesture, null);
  return '';
}

/** Says so where the wall that was reached stands a little off the length that was typed. */
function sayWhereReached({ reached, length }: TypedEnd, typed: Mm): void {
  if (!reached || Math.abs(length - typed) < NEWS) return;
  const words = `It is joined to the wall there: ${formatMeasured(length, store().plan.display.length)} as drawn.`;
  store().say([store().message, words].filter(Boolean).join(' '));
}

/** A smaller difference between typed and drawn is not worth a word, mm. */
const NEWS: Mm = 1;

function shownCorner({ pointer }: WallGesture): XY | null {
  return useSketch.getState().nextCorner ?? (pointer && cornerAt(pointer).at);
}
