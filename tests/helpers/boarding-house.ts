/**
 * The large sample: an invented boarding house of 30 rooms and 400 features (openings, fixtures, objects), made by rule
 * from one seed, so that it is the same on every machine. Lengths below are inches; the plan holds mm.
 *
 * Two rows of fourteen rooms along a corridor that a door divides. Inside faces: north row y 0 to 192, corridor 196.5 to
 * 268.5, south row 273 to 465. Outside walls are 10 thick, inside walls 4.5.
 */
import type {
  Detector,
  Fixture,
  FixtureKind,
  Opening,
  Plan,
  PlanObject,
  RoomLabel,
  RoomUse,
  Wall,
} from '../../geometry/plan/model.ts';

export const FEATURES = 400;
const DEPTH = 192;
const THIN = 4.5;
const CORRIDOR = { top: 196.5, bottom: 268.5 };
const SOUTH = { top: 273, bottom: 465 };
const WIDTHS = [150, 126, 132, 120, 138, 126, 120, 144, 132, 126, 138, 120, 132, 156];
const NORTH_USES: readonly RoomUse[] = [
  'living-room',
  'dining-room',
  'kitchen',
  'storage',
  'bedroom',
  'bedroom',
  'bedroom',
  'bathroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'bedroom',
];
const SOUTH_USES: readonly RoomUse[] = [
  'laundry',
  'utility',
  'bathroom',
  'office',
  'bedroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'bathroom',
  'bedroom',
  'bedroom',
  'bedroom',
  'exercise-room',
];

interface Cell {
  readonly id: string;
  readonly row: 'north' | 'south';
  readonly use: RoomUse;
  readonly left: number;
  readonly width: number;
  readonly name: string;
}

/** Everything of the level while it is being furnished. */
interface Draft {
  readonly openings: Opening[];
  readonly fixtures: Fixture[];
  readonly objects: PlanObject[];
  readonly detectors: Detector[];
}

/** The plan of `samples/05-boarding-house.plan.json`. */
export function boardingHouse(): Plan {
  const cells = [...row('north', WIDTHS, NORTH_USES), ...row('south', shuffled(WIDTHS, 11), SOUTH_USES)];
  const last = cells[13] as Cell;
  const breadth = last.left + last.width;
  const draft: Draft = { openings: [], fixtures: [], objects: [], detectors: [] };
  for (const cell of cells) furnish(cell, draft);
  corridor(breadth, draft);
  return {
    format: 'stillspot-plan',
    version: 1,
    title: 'Harbour Street boarding house, garden level',
    display: { length: 'feet-inches', radon: 'pCi/L' },
    site: {
      label: '31 Harbour Street',
      timeZone: 'America/New_York',
      latitude: null,
      longitude: null,
      north: 0,
      purpose: 'own-household',
    },
    protocol: { profile: 'home-short-term', overrides: [] },
    tapeTolerance: mm(1),
    levels: [
      {
        id: 'L1',
        name: 'Garden level',
        order: 0,
        ceiling: mm(96),
        living: 'lived-in',
        ground: 'slab',
        walls: walls(cells, breadth),
        openings: draft.openings,
        rooms: labels(cells, breadth),
        fixtures: draft.fixtures,
        objects: draft.objects,
        detectors: draft.detectors,
      },
    ],
    kit: { kind: 'charcoal-barrier', minimumHours: 48, maximumHours: 96, labDays: 5 },
    visit: { closedSince: null, mitigationOnSince: null, start: null, end: null },
    conditions: [],
    readings: [],
  };
}

function row(side: Cell['row'], widths: readonly number[], uses: readonly RoomUse[]): readonly Cell[] {
  let left = 0;
  let bedroom = side === 'north' ? 0 : 10;
  return widths.map((width, index) => {
    const use = uses[index] as RoomUse;
    if (use === 'bedroom') bedroom += 1;
    const name = use === 'bedroom' ? `Bedroom ${bedroom}` : (NAMES[use] ?? use);
    const cell = { id: `${side === 'north' ? 'n' : 's'}${index + 1}`, row: side, use, left, width, name };
    left += width + THIN;
    return cell;
  });
}

const NAMES: Partial<Record<RoomUse, string>> = {
  'living-room': 'Lounge',
  'dining-room': 'Dining room',
  kitchen: 'Kitchen',
  storage: 'Store',
  bathroom: 'Bathroom',
  laundry: 'Laundry',
  utility: 'Boiler room',
  office: 'Office',
  'exercise-room': 'Exercise room',
};

function walls(cells: readonly Cell[], breadth: number): readonly Wall[] {
  const list: Wall[] = [];
  const add = (x1: number, y1: number, x2: number, y2: number, thickness: number) =>
    list.push({
      id: `w${list.length + 1}`,
      from: [mm(x1), mm(y1)],
      to: [mm(x2), mm(y2)],
      thickness: mm(thickness),
      side: 'auto',
    });
  const [left, right, top, bottom] = [-5, breadth + 5, -5, SOUTH.bottom + 5];
  add(left, top, right, top, 10);
  add(right, top, right, bottom, 10);
  add(right, bottom, left, bottom, 10);
  add(left, bottom, left, top, 10);
  add(left, DEPTH + THIN / 2, right, DEPTH + THIN / 2, THIN);
  add(left, SOUTH.top - THIN / 2, right, SOUTH.top - THIN / 2, THIN);
  const middle = breadth / 2;
  add(middle, DEPTH + THIN / 2, middle, SOUTH.top - THIN / 2, THIN);
  for (const cell of cells) {
    const x = cell.left + cell.width + THIN / 2;
    if (x > breadth) continue;
    if (cell.row === 'north') add(x, top, x, DEPTH + THIN / 2, THIN);
    else add(x, SOUTH.top - THIN / 2, x, bottom, THIN);
  }
  return list;
}

function labels(cells: readonly Cell[], breadth: number): readonly RoomLabel[] {
  const rooms = cells.map(({ id, name, use, left, width, row: side }): RoomLabel => {
    const y = side === 'north' ? DEPTH / 2 : SOUTH.top + DEPTH / 2;
    return { id, name, use, at: [mm(left + width / 2), mm(y)] };
  });
  const y = mm((CORRIDOR.top + CORRIDOR.bottom) / 2);
  return [
    ...rooms,
    { id: 'h1', name: 'West corridor', use: 'hall', at: [mm(breadth / 4), y] },
    { id: 'h2', name: 'East corridor', use: 'hall', at: [mm((breadth * 3) / 4), y] },
  ];
}

/** Puts things into a room by distance from its left wall and from its outside wall, so that both rows are furnished alike. */
class Room {
  private readonly cell: Cell;
  private readonly draft: Draft;
  constructor(cell: Cell, draft: Draft) {
    this.cell = cell;
    this.draft = draft;
  }

  private at(across: number, deep: number): readonly [number, number] {
    return [mm(this.cell.left + across), mm(this.cell.row === 'north' ? deep : SOUTH.bottom - deep)];
  }

  object(name: string, across: number, deep: number, width: number, depth: number, bottom: number, top: number): void {
    this.draft.objects.push({
      id: `t${this.draft.objects.length + 1}`,
      name,
      shape: { box: { center: this.at(across, deep), width: mm(width), depth: mm(depth), turn: 0 } },
      bottom: mm(bottom),
      top: mm(top),
    });
  }

  lamp(across: number, deep: number, bottom: number): void {
    const shape = { circle: { center: this.at(across, deep), radius: mm(5) } };
    this.draft.objects.push({
      id: `t${this.draft.objects.length + 1}`,
      name: 'Lamp',
      shape,
      bottom: mm(bottom),
      top: mm(bottom + 18),
    });
  }

  fixture(
    kind: FixtureKind,
    across: number,
    deep: number,
    size: number | readonly [number, number],
    bottom: number,
    top: number,
  ): void {
    const center = this.at(across, deep);
    const shape =
      typeof size === 'number'
        ? { circle: { center, radius: mm(size) } }
        : { box: { center, width: mm(size[0]), depth: mm(size[1]), turn: 0 } };
    const id = `f${this.draft.fixtures.length + 1}`;
    this.draft.fixtures.push({ id, kind, name: '', shape, bottom: mm(bottom), top: mm(top), stream: null });
  }

  /** Offsets count from the wall's `from` end, which lies 5 outside the inside face. The south wall runs from right to left. */
  window(across: number, width: number, bottom: number): void {
    const near = this.cell.left + across - width / 2;
    const north = this.cell.row === 'north';
    const offset = north ? near + 5 : breadthOf() + 5 - (near + width);
    this.opening(north ? 'w1' : 'w3', 'window', offset, width, bottom, 84);
  }

  door(across: number): void {
    this.opening(this.cell.row === 'north' ? 'w5' : 'w6', 'door', this.cell.left + across + 5, 32, 0, 80);
  }

  opening(wall: string, kind: Opening['kind'], offset: number, width: number, bottom: number, top: number): void {
    const id = `o${this.draft.openings.length + 1}`;
    this.draft.openings.push({
      id,
      wall,
      kind,
      offset: mm(offset),
      width: mm(width),
      bottom: mm(bottom),
      top: mm(top),
    });
  }

  detector(label: string, across: number, deep: number, pair: string | null): void {
    const id = `d${this.draft.detectors.length + 1}`;
    this.draft.detectors.push({ id, label, at: this.at(across, deep), base: mm(30), radius: mm(2), tall: mm(1), pair });
  }
}

function furnish(cell: Cell, draft: Draft): void {
  const room = new Room(cell, draft);
  const w = cell.width;
  room.window(w / 2, 36, cell.use === 'bathroom' ? 60 : 36);
  room.door(w - 44);
  if (cell.use !== 'storage' && cell.use !== 'utility') room.fixture('radiator', w / 2, 5.5, [40, 5], 4, 28);
  const plan = FURNITURE[cell.use];
  if (plan) plan(room, w, cell.id);
}

const FURNITURE: Partial<Record<RoomUse, (room: Room, w: number, id: string) => void>> = {
  bedroom: (room, w, id) => {
    room.object('Bed', 22, 99, 40, 78, 0, 24);
    room.object('Bedside table', 13, 49, 18, 18, 0, 24);
    room.lamp(13, 49, 24);
    room.object('Wardrobe', 26, 178, 48, 24, 0, 76);
    room.object('Desk', w - 14, 52, 24, 44, 0, 30);
    room.object('Chair', w - 37, 52, 18, 18, 0, 34);
    room.object('Bookcase', w - 8, 102, 12, 36, 0, 60);
    room.object('Chest', w - 12, 138, 20, 28, 0, 36);
    room.fixture('supply-register', w - 28, 178, [12, 6], 94, 96);
    detectorsOf(room, id);
  },
  'living-room': (room, w) => {
    room.fixture('fireplace', 14, 96, [24, 54], 0, 44);
    room.fixture('return-grille', 70, 190, [24, 4], 6, 20);
    room.object('Sofa', w - 22, 96, 36, 84, 0, 33);
    room.object('Low table', w - 52, 96, 14, 44, 0, 18);
    room.object('Armchair', 44, 46, 30, 30, 0, 34);
    room.object('Armchair', 44, 146, 30, 30, 0, 34);
    room.object('Upright piano', 40, 178, 58, 24, 0, 50);
    room.object('Stand', 82, 100, 14, 14, 0, 30);
    room.detector('H9', 82, 100, null);
  },
  'dining-room': (room, w) => {
    room.object('Long table', w / 2, 96, 40, 108, 0, 30);
    for (const deep of [60, 96, 132]) {
      room.object('Chair', w / 2 - 32, deep, 18, 18, 0, 34);
      room.object('Chair', w / 2 + 32, deep, 18, 18, 0, 34);
    }
    room.object('Sideboard', 10, 160, 16, 54, 0, 36);
    room.fixture('supply-register', w - 20, 178, [12, 6], 94, 96);
  },
  kitchen: (room, w) => {
    room.fixture('exhaust-fan', 14, 96, [20, 30], 66, 74);
    room.object('Range', 14, 96, 26, 30, 0, 36);
    room.object('Counter', 14, 50, 24, 58, 0, 36);
    room.object('Refrigerator', 16, 170, 32, 32, 0, 70);
    room.object('Sink bench', w - 14, 80, 24, 84, 0, 36);
    room.object('Island', w / 2 + 4, 110, 30, 48, 0, 36);
  },
  storage: (room, w) => {
    for (let i = 0; i < 6; i++) room.object('Shelf', 10, 20 + i * 27, 16, 25, 0, 72);
    for (let i = 0; i < 5; i++) room.object('Crate', w - 18, 20 + i * 27, 24, 24, 0, 24);
    room.fixture('dehumidifier', w / 2, 90, [14, 10], 0, 24);
  },
  bathroom: (room, w) => {
    room.fixture('exhaust-fan', w / 2, 96, [10, 10], 94, 96);
    room.object('Bath', 18, 96, 30, 60, 0, 22);
    room.object('Basin', w - 12, 60, 18, 24, 0, 33);
    room.object('Toilet', w - 14, 110, 26, 18, 0, 30);
    room.object('Linen cupboard', 20, 178, 36, 24, 0, 80);
  },
  laundry: (room, w) => {
    for (const deep of [30, 60, 90]) {
      room.fixture('washer', 16, deep, [28, 27], 0, 38);
      room.fixture('dryer', w - 16, deep, [28, 27], 0, 38);
    }
    room.fixture('floor-drain', w / 2, 80, 3, 0, 0);
    room.object('Folding table', w / 2, 140, 60, 28, 0, 34);
  },
  utility: (room, w) => {
    room.fixture('boiler', w / 2, 60, [36, 44], 0, 66);
    room.fixture('water-heater', 18, 60, 13, 0, 60);
    room.fixture('water-heater', 18, 92, 13, 0, 60);
    room.fixture('floor-drain', w / 2, 110, 4, 0, 0);
    room.fixture('sump-pit', 16, 172, 9, 0, 0);
    room.object('Tool bench', w - 16, 80, 24, 60, 0, 36);
  },
  office: (room, w) => {
    room.object('Desk', w / 2, 80, 60, 30, 0, 30);
    room.object('Chair', w / 2, 106, 20, 20, 0, 36);
    room.object('File cabinet', 10, 60, 18, 28, 0, 52);
    room.object('File cabinet', 10, 90, 18, 28, 0, 52);
    room.object('Bookcase', w - 8, 110, 12, 72, 0, 72);
    room.fixture('supply-register', w - 28, 178, [12, 6], 94, 96);
  },
  'exercise-room': (room, w) => {
    room.object('Treadmill', 30, 100, 32, 70, 0, 50);
    room.object('Bench', 80, 110, 20, 48, 0, 20);
    room.object('Weight rack', w - 12, 96, 18, 60, 0, 48);
    room.fixture('ceiling-fan', w / 2, 96, 24, 84, 94);
  },
};

/** Detectors of the bedrooms, by room: label, from the left wall, from the outside wall, pair. The odd ones show what goes wrong. */
const PLACES: Readonly<
  Record<string, readonly (readonly [label: string, across: number, deep: number, pair: string | null])[]>
> = {
  n5: [['H1', 74, 100, null]],
  n6: [['H2', 70, 57.5, null]],
  n7: [
    ['H3', 66, 110, 'H'],
    ['H4', 75.5, 110, 'H'],
  ],
  n10: [['H5', 62, 40, null]],
  s5: [['H6', 74, 100, null]],
  s8: [['H7', 72, 120, null]],
  s12: [['H8', 66, 96, null]],
};

function detectorsOf(room: Room, id: string): void {
  const places = PLACES[id] ?? [];
  const [first] = places;
  if (!first) return;
  const middle = places.reduce((sum, [, across]) => sum + across, 0) / places.length;
  room.object('Stand', middle, first[2], 8 + 8 * places.length, 14, 0, 30);
  for (const [label, across, deep, pair] of places) room.detector(label, across, deep, pair);
}

/** Doors at both ends and in the middle, radiators, and lockers until the house has its number of features. */
function corridor(breadth: number, draft: Draft): void {
  const hall = new Room({ id: 'h', row: 'north', use: 'hall', left: 0, width: breadth, name: '' }, draft);
  hall.opening('w2', 'door', 5 + CORRIDOR.top + 18, 36, 0, 80);
  hall.opening('w4', 'door', 5 + SOUTH.bottom - CORRIDOR.bottom + 18, 36, 0, 80);
  hall.opening('w7', 'door', 20, 36, 0, 80);
  for (const share of [0.12, 0.38, 0.62, 0.88])
    hall.fixture('radiator', breadth * share, CORRIDOR.top + 3.5, [40, 5], 4, 28);
  const made = draft.openings.length + draft.fixtures.length + draft.objects.length;
  const spare = FEATURES - made;
  // Lockers stand in front of the solid part of the south corridor wall, away from its doors.
  const south = draft.openings.filter(({ wall }) => wall === 'w6').map(({ offset }) => offset / 25.4 - 5);
  const spots: number[] = [];
  for (let x = 14; spots.length < spare && x < breadth - 14; x += 15) {
    if (south.every((door) => x + 10 < door || x - 10 > door + 32)) spots.push(x);
  }
  for (const x of spots) hall.object('Locker', x, CORRIDOR.bottom - 7, 14, 12, 0, 72);
}

/** Inside length of both rows. */
function breadthOf(): number {
  return WIDTHS.reduce((sum, width) => sum + width, 0) + THIN * (WIDTHS.length - 1);
}

/** Fisher and Yates with the generator of Park and Miller (1988): the same order on every machine. */
function shuffled(list: readonly number[], seed: number): readonly number[] {
  const out = [...list];
  let state = seed;
  for (let i = out.length - 1; i > 0; i--) {
    state = (state * 16807) % 2147483647;
    const j = state % (i + 1);
    [out[i], out[j]] = [out[j] as number, out[i] as number];
  }
  return out;
}

/** Inches to mm, free of the noise of binary fractions. */
function mm(inches: number): number {
  return Math.round(inches * 25.4 * 1e6) / 1e6;
}
