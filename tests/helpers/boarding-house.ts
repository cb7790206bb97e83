/**
 * The large sample: an invented boarding house of 30 rooms and 400 features (openings, fixtures, objects), made by rule
 * from one seed, so that it is the same on every machine. Lengths below are inches; the plan holds mm.
 *
 * Two rows of fourteen rooms along a corridor that a door divides. Inside faces: north row y 0 to 192, corridor 196.5 to
 * 268.5, south row 273 to 465. Outside walls are 10 thick, inside walls 4.5.
 */
import type { Plan, RoomLabel, RoomUse, Wall } from '../../geometry/plan/model.ts';
import { furnish } from './boarding-house/furniture.ts';
import { type Cell, CORRIDOR, DEPTH, type Draft, mm, Room, SOUTH, THIN, WIDTHS } from './boarding-house/room.ts';

export const FEATURES = 400;
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
