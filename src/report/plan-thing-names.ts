/** Names of fixtures and objects: within their outline, beside it, or farther off with a leader. */
import { capital, FIXTURE_NOUN } from '../../geometry/messages/index.ts';
import type { Shape, XY } from '../../geometry/plan/model.ts';
import { shapeRing } from '../../geometry/plane/body.ts';
import { nearestOnRing, ringsContain } from '../../geometry/plane/ring.ts';
import { drawLabel, type Label, labelForms, labelSlot } from './label.ts';
import { type Ground, LEADER_OVER, lineSlot, MANNERS, type Placer, type Slot, slotCorners } from './placer.ts';
import { edgeToward, gridPlaces, insideRings, type Names, type PaperRings } from './places.ts';
import { thingSlot } from './plan-things.ts';
import { COLOUR, LINE_MM, SMALL_RATIO, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { element, line } from './svg.ts';
import { shortened, type TextStyle } from './text.ts';
import { toPaper, type View } from './view.ts';

const FIXTURE: TextStyle = { size: TYPE_MM.fine };
const OBJECT: TextStyle = { size: TYPE_MM.fine, colour: COLOUR.inkSoft };
/** Free paper between an outline and its name, mm: first without a leader, then with one. */
const AWAY = [0.3, 2.5, 5, 8, 11, 16];
/** A longer name is shortened on the drawing. */
const NAME_WIDTH = 40;
/** A name that is farther from its outline than this needs a leader, mm. */
const CLOSE = 1.2;

interface Thing {
  readonly name: string;
  readonly style: TextStyle;
  readonly own: Slot;
  readonly round: boolean;
  /** The outline; of a circle the square that it goes into. */
  readonly ring: readonly XY[];
}

/** @param slots of the things by id, as they were taken */
export function placeThingNames(
  matter: SubjectMatter,
  view: View,
  placer: Placer,
  slots: ReadonlyMap<string, Slot>,
): Names {
  const named = identifiedItems(matter, view, slots);
  // On a small drawing names would bury the rooms: they are listed with the tables.
  const things = view.scale.ratio > SMALL_RATIO ? [] : named;
  const floors = matter.model.rooms.map(({ floorRings }) =>
    floorRings.map((ring) => ring.map((p) => toPaper(view, p))),
  );
  const find = (thing: Thing) => placeInside(thing, placer) ?? placeBeside(thing, placer, floors);
  // A few names among many that are missing would say nothing: then the outlines of that kind stand alone.
  const mostOf = (style: TextStyle) => {
    const found = things.filter((thing) => thing.style === style).map((thing) => ({ thing, drawn: find(thing) }));
    return found.filter(({ drawn }) => drawn !== null).length * 2 >= found.length ? found : [];
  };
  const shown = [...mostOf(FIXTURE), ...mostOf(OBJECT)].flatMap(({ thing, drawn }) =>
    drawn === null ? [] : [{ thing, drawn }],
  );
  const placed = new Set(shown.map(({ thing }) => thing));
  return {
    drawn: shown.map(({ drawn }) => drawn).join(''),
    leftOff: named.filter((thing) => !placed.has(thing)).map(({ name }) => name),
  };
}

function identifiedItems({ level }: SubjectMatter, view: View, slots: ReadonlyMap<string, Slot>): readonly Thing[] {
  const thing = (id: string, name: string, shape: Shape, style: TextStyle): Thing => ({
    name: shortened(name.trim(), NAME_WIDTH, style),
    style,
    own: slots.get(id) ?? thingSlot(view, shape),
    round: 'circle' in shape,
    ring: shapeRing(shape).map((p) => toPaper(view, p)),
  });
  return [
    ...level.fixtures.map(({ id, kind, name, shape }) =>
      thing(id, name.trim() || capital(FIXTURE_NOUN[kind]), shape, FIXTURE),
    ),
    ...level.objects.map(({ id, name, shape }) => thing(id, name, shape, OBJECT)),
  ].filter(({ name }) => name);
}

function placeInside({ name, style, own, ring, round }: Thing, placer: Placer): string | null {
  const rings = [round ? squareWithin(own) : ring];
  for (const form of labelForms(name, style)) {
    if (form.width > Math.hypot(own.width, own.height)) continue;
    for (const [x, y] of gridPlaces(rings, [own.x, own.y])) {
      const slot = labelSlot(form, x, y);
      if (!insideRings(rings, slot) || !placer.isFree(slot, ['edge'], own)) continue;
      placer.take(slot);
      return drawLabel(form, x, y);
    }
  }
  return null;
}

/** The square that goes into a circle. */
function squareWithin({ x, y, width }: Slot): readonly XY[] {
  return slotCorners({ x, y, width: width * Math.SQRT1_2, height: width * Math.SQRT1_2, turn: 0 }).map(([cx, cy]) => [
    cx,
    cy,
  ]);
}

/** Close by, then farther; on the same floor first, then anywhere. */
function placeBeside(thing: Thing, placer: Placer, floors: readonly PaperRings[]): string | null {
  const { name, style, own } = thing;
  const floor = floors.find((rings) => ringsContain(rings, [own.x, own.y]));
  const forms = labelForms(name, style);
  for (const { anywhere, over } of manners(floor !== undefined)) {
    for (const away of AWAY) {
      for (const form of forms) {
        for (const [x, y] of around(own, form, away)) {
          const slot = labelSlot(form, x, y);
          if (!placer.isFree(slot, over)) continue;
          if (!anywhere && floor && !insideRings(floor, slot)) continue;
          const leader = leaderOf(thing, slot);
          if (leader && !placer.isFree(leader.slot, LEADER_OVER, own)) continue;
          placer.take(slot);
          if (leader) placer.take(leader.slot, 'line');
          return (leader?.drawn ?? '') + drawLabel(form, x, y);
        }
      }
    }
  }
  return null;
}

/** On its own floor clear of everything, then across the edge of the white, then on any floor or outside. */
function manners(hasFloor: boolean): readonly { readonly anywhere: boolean; readonly over: readonly Ground[] }[] {
  const [free = [], edges = []] = MANNERS;
  const own = [free, edges].map((over) => ({ anywhere: false, over }));
  return [...(hasFloor ? own : []), { anywhere: true, over: edges }];
}

const DIRECTIONS: readonly XY[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -0.5],
  [1, 0.5],
  [-1, -0.5],
  [-1, 0.5],
  [0.5, -1],
  [0.5, 1],
  [-0.5, -1],
  [-0.5, 1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

/** Middles of a label that lies `away` from the outline: beside, above and below, then slantwise. */
function around(own: Slot, { width, height }: Label, away: number): readonly XY[] {
  const corners = slotCorners(own);
  const reachX = Math.max(...corners.map(([x]) => x - own.x)) + away + width / 2;
  const reachY = Math.max(...corners.map(([, y]) => y - own.y)) + away + height / 2;
  return DIRECTIONS.map(([i, j]) => [own.x + i * reachX, own.y + j * reachY]);
}

/** A thin line from the name to its thing, with a dot where it ends; null where the name is close by. */
function leaderOf({ own, ring, round }: Thing, label: Slot): { readonly drawn: string; readonly slot: Slot } | null {
  const end = round ? onCircle(own, label) : nearestOnRing([label.x, label.y], ring);
  const start = edgeToward(label, end[0], end[1]);
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  if (length < CLOSE) return null;
  const at = (distance: number): XY => [
    start[0] + ((end[0] - start[0]) * distance) / length,
    start[1] + ((end[1] - start[1]) * distance) / length,
  ];
  // The slot keeps clear of the name and of the outline, which are both taken.
  const [a, b] = [at(0.3), at(length - 0.3)];
  return {
    drawn:
      line(start[0], start[1], end[0], end[1], { stroke: COLOUR.inkSoft, 'stroke-width': LINE_MM.rule }) +
      element('circle', { cx: end[0], cy: end[1], r: 0.32, fill: COLOUR.inkSoft }),
    slot: lineSlot(a[0], a[1], b[0], b[1], 0.2),
  };
}

function onCircle({ x, y, width }: Slot, toward: Slot): XY {
  const length = Math.hypot(toward.x - x, toward.y - y) || 1;
  return [x + ((toward.x - x) / length) * (width / 2), y + ((toward.y - y) / length) * (width / 2)];
}
