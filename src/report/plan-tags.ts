/** The tag of each detector: mark, label and verdict word in a box, with a leader to where it stands. */
import { headlineText, toneOf } from '../../geometry/messages/index.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { type Ground, LEADER_OVER, lineSlot, MANNERS, type Placer, type Slot, slotCorners } from './placer.ts';
import { gridPlaces } from './places.ts';
import { COLOUR, LINE_MM, SMALL_RATIO, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { group, line, rectangle } from './svg.ts';
import { verdictMark } from './svg-shapes.ts';
import { CAP_HEIGHT, drawText, shortened, textWidth } from './text.ts';
import { toPaper, type View } from './view.ts';

type Placed = SubjectMatter['detectors'][number];

const LABEL = { size: TYPE_MM.body, weight: 'bold' } as const;
const WORD = { size: TYPE_MM.body } as const;
const HEIGHT = 4.6;
/** Free paper around the box, mm. */
const AIR = 0.5;
/** From the box's left edge to the label: the mark stands before it. */
const LABEL_AT = 5;
/** A longer label is shortened on the drawing; the tables have it whole. */
const LABEL_WIDTH = 24;
/** How far a tag may stand from its detector, mm: near, farther, far. */
const RINGS = [
  [3, 5, 7, 10],
  [14, 18, 24],
  [30, 40, 55],
] as const;

/** Where a leader begins, mm from the middle of the detector; and how far the ground reaches that the detector takes. */
const RIM = 1.1;
const OWN_GROUND = 1.8;

interface Tag {
  readonly label: string;
  readonly word: string;
  readonly wordAt: number;
  readonly width: number;
}

/** Where no ground is free on the whole drawing the tag is left out: the verdicts stand beside the drawing as well. */
export function placeTag({ detector, report }: Placed, view: View, placer: Placer): string {
  const at = toPaper(view, detector.at);
  const tag = makeTag(detector.label.trim() || detector.id, headlineText(report));
  const spot = nearSpot(at, tag, view, placer) ?? anySpot(at, tag, placer);
  if (!spot) return '';
  const leader = leaderSlot(at, spot, tag, RIM);
  placer.take(boxSlot(spot, tag));
  if (leader) placer.take(leader, 'line');
  const colour = COLOUR.verdict[toneOf(report)].line;
  const [left, top] = [spot[0] - tag.width / 2, spot[1] - HEIGHT / 2];
  const baseline = spot[1] + (LABEL.size * CAP_HEIGHT) / 2;
  const box = { rx: 0.8, fill: COLOUR.paper, stroke: colour, 'stroke-width': LINE_MM.box };
  return group(
    {},
    leader ? drawLeader(leader, colour) : '',
    rectangle(left, top, tag.width, HEIGHT, box),
    verdictMark(toneOf(report), left + 2.5, spot[1], 1.5),
    drawText(left + LABEL_AT, baseline, tag.label, LABEL),
    drawText(left + tag.wordAt, baseline, tag.word, { ...WORD, colour }),
  );
}

function makeTag(text: string, word: string): Tag {
  const label = shortened(text, LABEL_WIDTH, LABEL);
  const wordAt = LABEL_AT + textWidth(label, LABEL) + 1.2;
  return { label, word, wordAt, width: wordAt + textWidth(word, WORD) + 1.2 };
}

/** Round about the detector. */
function nearSpot(at: XY, tag: Tag, view: View, placer: Placer): XY | null {
  for (const { ring, over } of tries(view)) {
    for (const spot of ring.flatMap((far) => circle(at, far, tag.width))) {
      if (!placer.isFree(boxSlot(spot, tag), over)) continue;
      const leader = leaderSlot(at, spot, tag, OWN_GROUND);
      if (!leader || placer.isFree(leader, LEADER_OVER)) return spot;
    }
  }
  return null;
}

/** Anywhere on the drawing, the nearest first, its leader across whatever lies between. */
function anySpot(at: XY, tag: Tag, placer: Placer): XY | null {
  const { x, y, width, height } = placer.area;
  const whole = slotCorners({ x: x + width / 2, y: y + height / 2, width, height, turn: 0 }).map(
    ([cx, cy]): XY => [cx, cy],
  );
  return gridPlaces([whole], at).find((spot) => placer.isFree(boxSlot(spot, tag), LEADER_OVER)) ?? null;
}

/** Near before clear of outlines; on a small drawing, where a tag would cover a room, the other way round. */
function tries({ scale }: View): readonly { readonly ring: readonly number[]; readonly over: readonly Ground[] }[] {
  const overWalls = RINGS.map((ring) => ({ ring, over: LEADER_OVER }));
  const apart =
    scale.ratio > SMALL_RATIO
      ? MANNERS.flatMap((over) => RINGS.map((ring) => ({ ring, over })))
      : RINGS.flatMap((ring) => MANNERS.map((over) => ({ ring, over })));
  // A tag rather stands over a wall than nowhere.
  return [...apart, ...overWalls];
}

/** Sixteen middles of the box about a point, the upper right first. */
function circle([x, y]: XY, far: number, width: number): readonly XY[] {
  return Array.from({ length: 16 }, (_, i): XY => {
    const angle = -Math.PI / 4 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 8);
    return [x + Math.cos(angle) * (far + width / 2), y + Math.sin(angle) * (far + HEIGHT / 2)];
  });
}

function boxSlot([x, y]: XY, { width }: Tag): Slot {
  return { x, y, width: width + 2 * AIR, height: HEIGHT + 2 * AIR, turn: 0 };
}

/** From `gap` beside the middle of the detector to the box; null where they are no farther apart. */
function leaderSlot(from: XY, to: XY, { width }: Tag, gap: number): Slot | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const inBox = Math.min(width / 2 / Math.max(Math.abs(dx), 1e-9), HEIGHT / 2 / Math.max(Math.abs(dy), 1e-9));
  const length = Math.hypot(dx, dy);
  const [start, end] = [gap / length, 1 - Math.min(1, inBox)];
  if (end <= start) return null;
  return lineSlot(from[0] + dx * start, from[1] + dy * start, from[0] + dx * end, from[1] + dy * end, 0.3);
}

function drawLeader({ x, y, width, turn }: Slot, colour: string): string {
  const [dx, dy] = [Math.cos((turn * Math.PI) / 180) * (width / 2), Math.sin((turn * Math.PI) / 180) * (width / 2)];
  return line(x - dx, y - dy, x + dx, y + dy, { stroke: colour, 'stroke-width': LINE_MM.rule * 1.4 });
}
