import { describe, expect, it } from 'vitest';
import { correctedWall } from '../../../geometry/edit/wall-edit.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { heightsRefusal, openingRefusal, sizeRefusal, thicknessRefusal } from '../../../geometry/messages/index.ts';
import type { Level, Opening } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';

const lengthened = (length: number) => {
  const edit = correctedWall(buildLevel(level), 'w1', length, 'to', 'feet-inches');
  return edit.ok ? '' : edit.reason;
};
const inch = (inches: number) => inches * 25.4;
/** A wall of 10 ft with a door of 32 in at its beginning, under a ceiling of 7 ft 6 in. */
const door: Opening = { id: 'o1', wall: 'w1', kind: 'door', offset: 0, width: inch(32), bottom: 0, top: inch(80) };
const level: Level = {
  ...emptyLevel('L1'),
  ceiling: inch(90),
  walls: [{ id: 'w1', from: [0, 0], to: [inch(120), 0], thickness: 100, side: 'auto' }],
  openings: [door],
};
const glass: Opening = {
  id: 'o2',
  wall: 'w1',
  kind: 'window',
  offset: inch(60),
  width: inch(32),
  bottom: inch(52),
  top: inch(72),
};

describe('openingRefusal', () => {
  it.each<[string, Partial<Opening>, string]>([
    ['one that fits', {}, ''],
    [
      'past the end of its wall',
      { offset: inch(92) },
      'The window would reach 4 in past the end of its wall. Slide it back or make it narrower.',
    ],
    ['before its wall', { offset: -inch(3) }, 'The window would begin 3 in before its wall. Write 0 or more.'],
    ['over another', { offset: inch(20) }, 'The window would lie 1 ft over a door. Slide it away or make it narrower.'],
    ['no width', { width: 0 }, 'The width must be more than 0.'],
    ['head below sill', { top: inch(50) }, 'The head must be above the sill. Raise the head or lower the sill first.'],
    [
      'head above the ceiling',
      { top: inch(92) },
      'The head would stand 2 in above the ceiling. Lower it, or raise the ceiling of the level first.',
    ],
  ])('%s', (_name, patch, words) => {
    expect(openingRefusal(level, { ...glass, ...patch }, 'feet-inches')).toBe(words);
  });
});

describe('other numbers that make no thing', () => {
  it.each([
    [heightsRefusal(0, inch(30), inch(90), 'feet-inches'), ''],
    [
      heightsRefusal(inch(40), inch(30), inch(90), 'feet-inches'),
      'The top would be 10 in below the underside. Change the other one first.',
    ],
    [
      heightsRefusal(0, inch(96), inch(90), 'feet-inches'),
      'It would stand 6 in above the ceiling. Lower it, or raise the ceiling of the level first.',
    ],
    [thicknessRefusal(inch(8), 'feet-inches'), ''],
    [thicknessRefusal(203_200, 'metric'), 'A wall is 1 cm to 2.00 m thick. Check the unit.'],
    [sizeRefusal(1), ''],
    [sizeRefusal(0), 'The size must be more than 0. To remove it, delete it.'],
    [lengthened(inch(120)), ''],
    [
      lengthened(inch(30)),
      'The door would reach 2 in past the end of its wall. Slide it back or make it narrower first, or move the other end.',
    ],
    [lengthened(0), 'A wall has some length. To remove it, delete it.'],
  ])('%s', (words, expected) => {
    expect(words).toBe(expected);
  });
});
