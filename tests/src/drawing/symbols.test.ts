import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { TONES } from '../../../geometry/messages/tone.ts';
import { FIXTURE_KINDS, type Fixture, type FixtureKind, type Level } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import type { Shape } from '../../../src/drawing/display-list.ts';
import { thingShapes } from '../../../src/drawing/things.ts';
import { verdictSign } from '../../../src/drawing/verdict-sign.ts';
import { openingShapes, wallShapes } from '../../../src/drawing/walls.ts';

const NONE: ReadonlySet<string> = new Set();

function fixture(kind: FixtureKind, more: Partial<Fixture> = {}): Fixture {
  const shape = { box: { center: [0, 0] as const, width: 600, depth: 300, turn: 0 } };
  return { id: 'f1', kind, name: '', shape, bottom: 0, top: 500, stream: null, ...more };
}

const drawn = (thing: Fixture): readonly Shape[] => thingShapes({ ...emptyLevel('L'), fixtures: [thing] }, NONE);
const asText = (shapes: readonly Shape[]) => JSON.stringify(shapes.map(({ ink, parts }) => [ink, parts]));

describe('thingShapes(level, chosen)', () => {
  it('has a sign for each kind that the trade has one for, and no two of them alike', () => {
    const signed: readonly FixtureKind[] = [
      'supply-register',
      'return-grille',
      'exhaust-fan',
      'floor-drain',
      'sump-pit',
      'mitigation-pipe',
    ];
    const texts = signed.map((kind) => asText(drawn(fixture(kind)).slice(1)));
    expect(new Set(texts).size).toBe(signed.length);
    for (const kind of FIXTURE_KINDS) {
      expect(drawn(fixture(kind))).toHaveLength(signed.includes(kind) || kind.endsWith('-fan') ? 2 : 1);
    }
  });

  it('draws what hangs overhead with broken lines, from 72 in up', () => {
    const dashOf = (bottom: number) => drawn(fixture('furnace', { bottom, top: 2400 }))[0]?.ink.dash;
    expect(dashOf(1828.7)).toBeUndefined();
    expect(dashOf(1828.8)).toBe('overhead');
  });

  it('draws the air that a fixture blows under its outline', () => {
    const [air] = drawn(fixture('supply-register', { stream: { direction: 90, spread: 60, reach: 2000 } }));
    expect(air?.parts[0]?.extent.maxY).toBeCloseTo(2000);
  });

  it('gives the same shapes for the same object, in the accent where it is chosen', () => {
    const one = fixture('furnace');
    expect(drawn(one)[0]).toBe(drawn(one)[0]);
    expect(thingShapes({ ...emptyLevel('L'), fixtures: [one] }, new Set(['f1']))[0]?.ink.color).toBe('accent');
  });
});

describe('verdictSign(tone, at, radius)', () => {
  it('tells the verdicts apart without color, and stays within its radius', () => {
    const plain = (shape: Shape): Shape => ({ ...shape, ink: { ...shape.ink, color: 'ink' } });
    const forms = TONES.map((tone) => asText(verdictSign(tone, [10, 20], 5).map(plain)));
    expect(new Set(forms).size).toBe(TONES.length);
    for (const { extent } of TONES.flatMap((tone) => verdictSign(tone, [10, 20], 5)).flatMap(({ parts }) => parts)) {
      const inside = [extent.minX - 5, 15 - extent.maxX, extent.minY - 15, 25 - extent.maxY];
      expect(Math.min(...inside)).toBeGreaterThanOrEqual(-1e-9);
    }
  });
});

describe('wallShapes and openingShapes', () => {
  const level: Level = {
    ...emptyLevel('L'),
    walls: [{ id: 'w1', from: [0, 0], to: [4000, 0], thickness: 200, side: 'auto' }],
    openings: (['door', 'window', 'passage'] as const).map((kind, i) => ({
      id: kind,
      wall: 'w1',
      kind,
      offset: 200 + i * 1200,
      width: 900,
      bottom: 0,
      top: 2000,
    })),
  };
  const model = buildLevel(level);

  it('cut every opening out of the wall, and draw leaf and sweep of a door, broken lines of a passage', () => {
    const [cut, ...symbols] = openingShapes(model, NONE);
    expect(cut?.parts).toHaveLength(3);
    const count = (is: (shape: Shape) => boolean) => symbols.filter(is).flatMap(({ parts }) => parts).length;
    expect(count(({ ink }) => ink.line === 'leaf')).toBe(1);
    expect(count(({ ink }) => ink.dash === 'passage')).toBe(1);
    expect(count(({ ink }) => ink.line === 'opening' && !ink.dash)).toBe(3);
  });

  it('keep the part of a piece of wall from one drawing to the next', () => {
    expect(wallShapes(model, NONE)[0]?.parts[0]).toBe(wallShapes(model, NONE)[0]?.parts[0]);
    expect(wallShapes(model, new Set(['w1']))[2]?.ink.fill).toBe('accent');
  });
});
