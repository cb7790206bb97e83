/** Furniture and fixtures of the rooms of the boarding house, by use. Lengths in inches. */
import type { RoomUse } from '../../../geometry/plan/model.ts';
import { type Cell, type Draft, Room } from './room.ts';

/** Adds window, door, radiator and furniture of a room to the draft. */
export function furnish(cell: Cell, draft: Draft): void {
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
    room.object('Linen closet', 20, 178, 36, 24, 0, 80);
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

/** Detectors of the bedrooms, by room: label, distances from the left wall and from the outside wall, pair. Some are misplaced on purpose. */
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
