import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { shapeBody } from '../../../../geometry/plane/body.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { dirtyBySelection, dirtyInWalls } from '../../../../src/editor/stage/dirty-extents.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the plain basement cannot be read');
const [level] = read.plan.levels;
if (!level) throw new Error('no level');
const model = buildLevel(level);
const fixture = level.fixtures.find(({ stream }) => !stream);
if (!fixture) throw new Error('no fixture without a stream');

describe('the dirty extents of walls and things', () => {
  it('are none between a model and itself', () => {
    expect(dirtyInWalls(model, model)).toEqual([]);
  });

  it('are where a thing was removed, and nowhere else', () => {
    const without = { ...model, level: { ...level, fixtures: level.fixtures.filter((each) => each !== fixture) } };
    expect(dirtyInWalls(model, without)).toEqual([shapeBody(fixture.shape).extent]);
  });

  it('are where a thing was and where it is', () => {
    const renamed = { ...fixture, name: 'other' };
    const changed = {
      ...model,
      level: { ...level, fixtures: level.fixtures.map((each) => (each === fixture ? renamed : each)) },
    };
    expect(dirtyInWalls(model, changed)).toHaveLength(2);
  });

  it('are those of what one of two selections holds only', () => {
    const [wall] = level.walls;
    if (!wall) throw new Error('no wall');
    expect(dirtyBySelection(model, [fixture.id], [fixture.id])).toEqual([]);
    expect(dirtyBySelection(model, [], [fixture.id])).toEqual([shapeBody(fixture.shape).extent]);
    expect(dirtyBySelection(model, [wall.id, fixture.id], [fixture.id]).length).toBeGreaterThan(0);
  });
});
