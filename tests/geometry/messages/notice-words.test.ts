import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Notice } from '../../../geometry/level/types.ts';
import { describeNotice } from '../../../geometry/messages/index.ts';
import type { Level, RoomLabel, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
const label = (id: string, name: string, at: XY): RoomLabel => ({ id, name, use: 'den', at });
const SQUARE = [
  wall('w1', [0, 0], [4000, 0]),
  wall('w2', [4000, 0], [4000, 3000]),
  wall('w3', [4000, 3000], [0, 3000]),
];
const CLOSED = [...SQUARE, wall('w4', [0, 3000], [0, 0])];

/** Returns the notices of the engine on a drawing, in words. */
function wordsOn(part: Partial<Level>): readonly string[] {
  const level = { ...emptyLevel('L1'), ...part };
  return buildLevel(level).notices.map((notice) => describeNotice(notice, 'feet-inches', level));
}

describe('describeNotice, on drawings with that trouble', () => {
  it('a gap too large to close: how far, and what to do', () => {
    // 12 in between the end of the last wall and the first corner.
    const words = wordsOn({ walls: [...SQUARE, wall('w4', [0, 3000], [0, 304.8])] });
    expect(words).toContain(
      'Two walls stop 1 ft short of each other, so the room stays open. Draw one end onto the other.',
    );
  });

  it('a gap that rounds to nothing: less than the finest length', () => {
    const notice: Notice = { kind: 'gap-closed', at: [0, 0], ids: ['w1', 'w2'], length: 1.4 };
    expect(describeNotice(notice, 'feet-inches')).toContain('Two walls stop less than 1/8 in short of each other.');
    expect(describeNotice(notice, 'metric')).toContain('Two walls stop less than 0.5 cm short of each other.');
  });

  it('a name outside every room, by that name', () => {
    const words = wordsOn({
      walls: CLOSED,
      rooms: [label('r1', 'Den', [2000, 1500]), label('r2', 'Attic', [9000, 9000])],
    });
    expect(words).toEqual([
      '"Attic" does not lie in a closed room. Move it into its room, or close the walls around it.',
    ]);
  });

  it('two names in one room, both by name', () => {
    const words = wordsOn({
      walls: CLOSED,
      rooms: [label('r1', 'Den', [1000, 1500]), label('r2', 'Office', [3000, 1500])],
    });
    expect(words).toEqual([
      '"Den" and "Office" stand in one room. The first one counts. Delete the others, or draw the wall between.',
    ]);
  });

  it('a room without a use', () => {
    expect(wordsOn({ walls: CLOSED })).toEqual([
      'A room has no use yet. Enter what it is used for: until then nothing in it can turn clear.',
    ]);
  });
});

describe('describeNotice, for every kind there is', () => {
  const KINDS: readonly Notice['kind'][] = [
    'gap-closed',
    'gap-open',
    'overshoot',
    'walls-crowded',
    'walls-overlap',
    'zero-length-wall',
    'label-outside-rooms',
    'labels-share-room',
    'open-passage-outside',
    'unlabelled-room',
  ];

  it.each(KINDS)('%s: a remark and a way out, in meters where the plan is metric', (kind) => {
    const length = kind.startsWith('gap') || kind.startsWith('over') || kind === 'walls-overlap' ? 120 : null;
    const words = describeNotice({ kind, ids: ['x'], at: [0, 0], length }, 'metric');
    expect(words.split(/[.:] /).length).toBeGreaterThanOrEqual(2);
    expect(words).toMatch(/\.$/);
    if (length !== null) expect(words).toContain('12 cm');
    expect(words).not.toMatch(/undefined|null|NaN| {2}/);
  });
});
