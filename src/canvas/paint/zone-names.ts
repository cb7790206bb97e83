import type { XY } from '../../../geometry/plan/model.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import type { ZoneEdge } from '../../../geometry/zone-edges.ts';
import { runLength } from '../../../geometry/zone-edges.ts';
import type { Places } from './names.ts';
import { type Pen, px } from './pen.ts';
import { drawLetters, FINE, type Letter, type TextStyle, textWidth } from './text.ts';

/** How often a rule's name is written: once for what runs round every room, more often for single things. */
const TIMES: Partial<Readonly<Record<RuleId, number>>> = { 'outside-wall': 1, object: 1, 'outside-opening': 3 };
const MANY = 6;
/** Clear line on either side of a name, px. */
const LINE_LEFT_PX = 14;

/** Writes each rule's name and distance along the edge of its zones, the line broken for it as on a map. */
export function paintZoneNames(
  pen: Pen,
  edges: readonly ZoneEdge[],
  nameOf: (edge: ZoneEdge) => string,
  places: Places,
): void {
  const written = new Map<RuleId, number>();
  const style: TextStyle = { ...FINE, colour: pen.theme.inkSoft, halo: pen.theme.card };
  const longestFirst = edges
    .filter(({ nameRun }) => nameRun !== null)
    .map((edge) => ({ edge, run: (edge.nameRun as readonly XY[]).map((point) => px(pen, point)) }))
    .sort((a, b) => runLength(b.run) - runLength(a.run));
  for (const { edge, run } of longestFirst) {
    const times = written.get(edge.zone.rule) ?? 0;
    if (times >= (TIMES[edge.zone.rule] ?? MANY)) continue;
    if (writeAlong(pen, nameOf(edge), run, style, places)) written.set(edge.zone.rule, times + 1);
  }
}

function writeAlong(pen: Pen, text: string, run: readonly XY[], style: TextStyle, places: Places): boolean {
  const width = textWidth(pen, text, style);
  const length = runLength(run);
  if (length < width + 2 * LINE_LEFT_PX) return false;
  // The middle first; then off it to both sides, where another name stands.
  for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
    const start = Math.min(length - width - 4, Math.max(4, length * share - width / 2));
    const line = lettersAlong(pen, text, run, start, width, style);
    if (!line || !claimAll(line, places, style.sizePx)) continue;
    drawLetters(pen, line, style);
    return true;
  }
  return false;
}

/** Letters set one by one along the line, so that they follow an arc. From left to right, whichever way the line runs. */
function lettersAlong(
  pen: Pen,
  text: string,
  run: readonly XY[],
  start: number,
  width: number,
  style: TextStyle,
): readonly Letter[] | null {
  const middle = pointAt(run, start + width / 2);
  if (!middle) return null;
  const leftwards =
    Math.cos(middle.angle) < -1e-6 || (Math.abs(Math.cos(middle.angle)) < 1e-6 && Math.sin(middle.angle) > 0);
  const line = leftwards ? [...run].reverse() : run;
  const begin = leftwards ? runLength(run) - start - width : start;
  const letters: Letter[] = [];
  let far = begin;
  for (const letter of text) {
    const own = textWidth(pen, letter, style);
    const spot = pointAt(line, far + own / 2);
    if (!spot) return null;
    letters.push({ letter, at: spot.at, angle: spot.angle });
    far += own;
  }
  return letters;
}

function claimAll(letters: readonly Letter[], places: Places, sizePx: number): boolean {
  const [first, last] = [letters[0], letters.at(-1)];
  if (!first || !last) return false;
  const middle: XY = [(first.at[0] + last.at[0]) / 2, (first.at[1] + last.at[1]) / 2];
  const width = Math.abs(last.at[0] - first.at[0]) + sizePx * 1.4;
  const height = Math.abs(last.at[1] - first.at[1]) + sizePx * 1.4;
  return places.claim(middle, width, height);
}

/** The point so far along the line, and the line's direction there in radians. */
function pointAt(run: readonly XY[], far: number): { readonly at: XY; readonly angle: number } | null {
  let passed = 0;
  for (let i = 1; i < run.length; i++) {
    const [a, b] = [run[i - 1] as XY, run[i] as XY];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (passed + length >= far && length > 0) {
      const share = (far - passed) / length;
      return {
        at: [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share],
        angle: Math.atan2(b[1] - a[1], b[0] - a[0]),
      };
    }
    passed += length;
  }
  return null;
}
