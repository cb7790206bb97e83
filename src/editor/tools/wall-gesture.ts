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

/** State of the wall tool in addition to the chain in the store. */
export interface WallGesture {
  readonly direction: WallDirection;
  /** Last place of the pointer; null before its first move, and after a corner was set by keyboard. */
  pointer: ToolPoint | null;
}

/** Shows the next wall with the pointer at a corner. @param corner null if only a typed length or an arrow key determines it */
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

/** The next corner: at the length in the box, in the direction of an arrow key or a turn; else at the pointer. */
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

/** Adds the walls of the chain to the level and asks for their lengths. */
export function endWalls(): void {
  const before = new Set(currentLevel().walls.map(({ id }) => id));
  store().endChain();
  clearSketch();
  const drawn = currentLevel().walls.filter(({ id }) => !before.has(id));
  askForWall(new Set(drawn.map(({ id }) => id)));
}

/**
 * Sets a corner. A corner on the start of the chain closes the outline, one on the last corner ends the chain.
 * @param keeps whether the tool then stays
 */
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

/** Ends the walls. Unless the tool is kept, the next press selects: with the wall tool a press on a length would begin an unwanted wall. */
function restAfterWalls(keeps: boolean): void {
  endWalls();
  if (!keeps) returnToSelect();
}

/** Moves the cross to the corner that was set, where the next arrow key starts. */
function startCrossAt(gesture: WallGesture, at: XY): void {
  putCross(at);
  keepInView(at);
  gesture.pointer = null;
}

/**
 * Sets the next corner, or by finger moves the last one, to the typed length and turn. Returns the reason of a refusal, in words; empty on
 * success.
 */
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
  // By finger the corner is set already: its wall gets the typed length and turn.
  if (!from || !before)
    return 'Show the direction first: move the pointer to where the wall goes, or press an arrow key.';
  const rest = points.slice(0, -1);
  const aside = turn ? gesture.direction.toward(rest, from) : from;
  store().setChain({ corners: [...rest, typedEnd(rest, aside ?? from, read.mm).at], takenBack: [] });
  showNextWall(gesture, null);
  return '';
}

/** Shows a message if the wall that was reached is a little off the typed length. */
function sayWhereReached({ reached, length }: TypedEnd, typed: Mm): void {
  if (!reached || Math.abs(length - typed) < NEWS) return;
  const words = `It is joined to the wall there: ${formatMeasured(length, store().plan.display.length)} as drawn.`;
  store().say([store().message, words].filter(Boolean).join(' '));
}

/** A smaller difference between typed and drawn is not reported, mm. */
const NEWS: Mm = 1;

function shownCorner(gesture: WallGesture): XY | null {
  return useSketch.getState().nextCorner ?? cornerAtPointer(gesture)?.at ?? null;
}

/** The corner at the pointer; null for a finger, which shows no direction once it is lifted. */
export function cornerAtPointer({ pointer }: WallGesture): Corner | null {
  return pointer && !pointer.touch ? cornerAt(pointer) : null;
}
