import type { XY } from '../../../../geometry/plan/model.ts';
import { memoize } from '../../../../geometry/plane/memoize.ts';
import type { Ring } from '../../../../geometry/plane/types.ts';
import { labelLine, polylineLength } from '../../../../geometry/region/label-line.ts';
import type { LevelRegion, Zone } from '../../../../geometry/region/types.ts';
import { edgeLength, type Stretch } from '../../../../geometry/region/visible-edges.ts';
import type { RuleId } from '../../../../geometry/rules/types.ts';
import { union } from '../../stage/rect.ts';
import { lengthPx, type Pen, px } from '../pen.ts';
import { drawLetters, FINE, type Letter, type TextStyle, textWidth } from '../text.ts';
import { boxAbout, type Mark } from './mark.ts';
import type { Places } from './places.ts';

/** How often a rule's name is written: once for what runs round every room, more often for single things. */
const TIMES: Partial<Readonly<Record<RuleId, number>>> = { 'outside-wall': 1, object: 1, 'outside-opening': 3 };
const MANY = 6;
/** Zones of a rule that are tried before it is taken that none has room: a house full of furniture has hundreds. */
const TRIES = 24;
/** A name follows an arc, but no corner: from letter to letter it turns by less than this, radians. */
const SHARPEST = 0.28;
/** Clear line on either side of a name, px. */
const LINE_LEFT_PX = 14;

/** Each rule's name and distance along the edge of its zones, the line broken for it as on a map. */
export function zoneNames(
  pen: Pen,
  seen: ReadonlyMap<Zone, readonly Stretch[]>,
  floors: readonly (readonly Ring[])[],
  nameOf: (zone: Zone) => string,
  places: Places,
): readonly Mark[] {
  const written = new Map<RuleId, number>();
  const tried = new Map<RuleId, number>();
  const style: TextStyle = { ...FINE, colour: pen.theme.inkSoft, halo: pen.theme.card };
  const marks: Mark[] = [];
  for (const { zone, stretches, longest } of longestFirst(seen)) {
    const [done, tries] = [written.get(zone.rule) ?? 0, tried.get(zone.rule) ?? 0];
    const text = nameOf(zone);
    const least = textWidth(pen, text, style) + 2 * LINE_LEFT_PX;
    if (done >= (TIMES[zone.rule] ?? MANY) || tries >= TRIES || lengthPx(pen, longest) < least) continue;
    tried.set(zone.rule, tries + 1);
    const run = labelLine(stretches, floors)?.map((point) => px(pen, point));
    const letters = run && placed(pen, text, run, style, places);
    if (!letters) continue;
    written.set(zone.rule, done + 1);
    marks.push(zoneMark(zone, letters, style));
  }
  return marks;
}

/** A name that is left out as soon as its zone is another one: it would stand on nothing. */
function zoneMark(zone: Zone, letters: readonly Letter[], style: TextStyle): Mark {
  return {
    draw: (on) => drawLetters(on, letters, style),
    box: letters.map(({ at }) => boxAbout(at, style.sizePx, style.sizePx)).reduce(union),
    followed: function (this: Mark, _, { region }) {
      return zonesIn(region).has(zone) ? this : null;
    },
  };
}

const zonesIn = memoize(({ zones }: LevelRegion): ReadonlySet<Zone> => new Set(zones));

function longestFirst(seen: ReadonlyMap<Zone, readonly Stretch[]>) {
  return [...seen]
    .map(([zone, stretches]) => ({
      zone,
      stretches,
      longest: Math.max(0, ...stretches.map((edges) => edges.reduce((sum, edge) => sum + edgeLength(edge), 0))),
    }))
    .sort((a, b) => b.longest - a.longest);
}

function placed(
  pen: Pen,
  text: string,
  run: readonly XY[],
  style: TextStyle,
  places: Places,
): readonly Letter[] | null {
  const width = textWidth(pen, text, style);
  const length = polylineLength(run);
  if (length < width + 2 * LINE_LEFT_PX) return null;
  // The middle first; then off it to both sides, where another name stands.
  for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
    const start = Math.min(length - width - 4, Math.max(4, length * share - width / 2));
    const letters = lettersAlong(pen, text, run, start, width, style);
    if (letters && claimAll(letters, places, style.sizePx)) return letters;
  }
  return null;
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
  const begin = leftwards ? polylineLength(run) - start - width : start;
  const letters: Letter[] = [];
  let far = begin;
  for (const letter of text) {
    const own = textWidth(pen, letter, style);
    const spot = pointAt(line, far + own / 2);
    const before = letters.at(-1);
    if (!spot || (before && turn(before.angle, spot.angle) > SHARPEST)) return null;
    letters.push({ letter, at: spot.at, angle: spot.angle });
    far += own;
  }
  return letters;
}

function turn(from: number, to: number): number {
  return Math.abs(Math.atan2(Math.sin(to - from), Math.cos(to - from)));
}

/** Letter by letter: one rectangle about a slanting or bent name would take the ground of many others. */
function claimAll(letters: readonly Letter[], places: Places, sizePx: number): boolean {
  const side = sizePx * 1.2;
  if (!letters.every(({ at }) => places.isFree(at, side, side))) return false;
  for (const { at } of letters) places.keep(at, side, side);
  return true;
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
