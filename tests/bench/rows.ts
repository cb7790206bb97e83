import type { LevelSize, Size } from '../helpers/seeded-level.ts';
import { firstBoth, firstRegion, firstSpot } from './first.ts';
import { equalWalls, wallsAHairApart, wallsAtOneNode } from './hard.ts';
import {
  bestPair,
  bestSpot,
  dragFrame,
  fromScratch,
  marginQuery,
  roomsFromWalls,
  roomsReady,
  thingMoved,
  wallChanged,
} from './ours.ts';
import { sunByMinutes, sunSwept } from './sun.ts';
import type { Effort, Samples } from './timing.ts';

type Statistic = 'median' | 'p99';

/** Limits of a figure, ms. */
interface Budget {
  readonly of: Statistic;
  readonly most: Partial<Readonly<Record<Size, number>>>;
}

/** A row of the table of the engine's own times. */
export interface Row {
  readonly id: string;
  readonly name: string;
  readonly sizes: readonly Size[];
  /** Repeats in a full run. */
  readonly times: number;
  readonly budgets: readonly Budget[];
  /** Whether each sample is the first work of a new process, as after a page is opened. */
  readonly isFirst?: boolean;
  readonly run: (size: Size | LevelSize, effort: Effort) => Samples;
}

/** Fresh processes in a full run. */
const FRESH = 20;

const ALL = ['house', 'large', 'huge'] as const;

export const ROWS: readonly Row[] = [
  {
    id: 'scratch',
    name: 'region from nothing but the drawing, rooms from walls included',
    sizes: ALL,
    times: 300,
    budgets: [{ of: 'median', most: { house: 1.5, large: 10, huge: 130 } }],
    run: fromScratch,
  },
  {
    id: 'rooms-ready',
    name: 'region, rooms ready',
    sizes: ALL,
    times: 300,
    budgets: [],
    run: roomsReady,
  },
  { id: 'rooms', name: 'rooms from walls', sizes: ALL, times: 300, budgets: [], run: roomsFromWalls },
  {
    id: 'moved',
    name: 'region after one thing was moved',
    sizes: ALL,
    times: 300,
    budgets: [
      { of: 'median', most: { house: 0.5, large: 1, huge: 2 } },
      { of: 'p99', most: { house: 4, large: 4, huge: 4 } },
    ],
    run: thingMoved,
  },
  { id: 'wall', name: 'region after one wall was changed', sizes: ALL, times: 100, budgets: [], run: wallChanged },
  {
    id: 'margin',
    name: 'one margin query, lists built',
    sizes: ALL,
    times: 50,
    budgets: [{ of: 'median', most: { house: 0.00015, large: 0.00015, huge: 0.00015 } }],
    run: marginQuery,
  },
  {
    id: 'spot',
    name: 'best spot, lists included',
    sizes: ALL,
    times: 100,
    budgets: [{ of: 'median', most: { house: 0.3, large: 1.5, huge: 30 } }],
    run: bestSpot,
  },
  {
    id: 'pair',
    name: 'best pair, lists included',
    sizes: ['house'],
    times: 100,
    budgets: [{ of: 'median', most: { house: 20 } }],
    run: bestPair,
  },
  {
    id: 'drag',
    name: 'one frame of dragging a detector (largest sample)',
    sizes: ['house'],
    times: 2000,
    budgets: [],
    run: dragFrame,
  },
  {
    id: 'first-region',
    name: 'first region of a fresh process, from nothing but the drawing',
    sizes: ['house', 'large'],
    times: FRESH,
    budgets: [{ of: 'median', most: { house: 15 } }],
    isFirst: true,
    run: firstRegion,
  },
  {
    id: 'first-spot',
    name: 'first best spot, after that region',
    sizes: ['house', 'large'],
    times: FRESH,
    budgets: [{ of: 'median', most: { house: 15 } }],
    isFirst: true,
    run: firstSpot,
  },
  {
    id: 'first-both',
    name: 'first region and first best spot together',
    sizes: ['house', 'large'],
    times: FRESH,
    budgets: [{ of: 'median', most: { house: 30, large: 60 } }],
    isFirst: true,
    run: firstBoth,
  },
  {
    id: 'equal-walls',
    name: '1,000 equal walls: rooms, region and best spot',
    sizes: ['house'],
    times: 5,
    budgets: [{ of: 'median', most: { house: 2000 } }],
    run: equalWalls,
  },
  {
    id: 'hair',
    name: '1,000 walls a millionth of a mm apart: rooms, region and best spot',
    sizes: ['house'],
    times: 5,
    budgets: [{ of: 'median', most: { house: 2000 } }],
    run: wallsAHairApart,
  },
  {
    id: 'star',
    name: '1,500 walls that end at one node: rooms, region and best spot',
    sizes: ['house'],
    times: 5,
    budgets: [{ of: 'median', most: { house: 2000 } }],
    run: wallsAtOneNode,
  },
  {
    id: 'sun',
    name: 'floor that direct sun crosses (8 windows, 96 h), the whole disc and every instant',
    sizes: ['house'],
    times: 60,
    budgets: [{ of: 'median', most: { house: 60 } }],
    run: sunSwept,
  },
  {
    id: 'sun-minutes',
    name: 'the same as the union of the light of each minute, the middle of the disc only (clipper2-ts)',
    sizes: ['house'],
    times: 20,
    budgets: [],
    run: sunByMinutes,
  },
];

export function rowOf(id: string): Row {
  const row = ROWS.find((one) => one.id === id);
  if (!row) throw new Error(`no row is called ${id}`);
  return row;
}
