import { area, booleanPointInPolygon, lineIntersect, lineString, point, polygon } from '@turf/turf';
import { describe, expect, it } from 'vitest';
import { roomAt } from '../../geometry/check/room.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Room } from '../../geometry/level/types.ts';
import type { Level, Wall, XY } from '../../geometry/plan/model.ts';
import { howMany } from '../helpers/how-many.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { randomPlan } from '../helpers/random-level.ts';
import { minus, unit, wedge } from './plane.ts';

/*
 * A third computation, by a library that works on a globe: the plan is placed at its true size around 0° N, 0° E, where the
 * globe is practically flat. Over the 30 m of a house the two differ by less than one part in 10¹⁰.
 */
const LEVELS = howMany(25, 120);
/** Meters per degree on turf's globe of radius 6371008.8 m. */
const METERS_PER_DEGREE = (6_371_008.8 * Math.PI) / 180;

type Place = (p: XY) => [number, number];

/** Returns conversions from plan to degrees and back, with the middle of the level at 0, 0; y down the page becomes south. */
function globeOf(level: Level): { place: Place; back: Place } {
  const ends = level.walls.flatMap(({ from, to }) => [from, to]);
  const middle = [0, 1].map((axis) => {
    const values = ends.map((end) => end[axis] as number);
    return (Math.min(...values) + Math.max(...values)) / 2;
  }) as [number, number];
  const scale = 1 / 1000 / METERS_PER_DEGREE;
  return {
    place: ([x, y]) => [(x - middle[0]) * scale, -(y - middle[1]) * scale],
    back: ([east, north]) => [east / scale + middle[0], -north / scale + middle[1]],
  };
}

function polygonOf(rings: readonly (readonly XY[])[], place: Place) {
  return polygon(rings.filter((ring) => ring.length > 2).map((ring) => [...ring, ring[0] as XY].map(place)));
}

/** Returns whether a ring is an outer ring, which runs clockwise on screen. */
function isOuter(ring: readonly XY[]): boolean {
  return ring.reduce((sum, p, i) => sum + wedge(p, ring[(i + 1) % ring.length] as XY), 0) > 0;
}

/** Returns the floors of a room as polygons: each outer ring with the holes inside it. */
function floorsOf({ floorRings }: Room, place: Place) {
  const holes = floorRings.filter((ring) => !isOuter(ring));
  return floorRings.filter(isOuter).map((outer) => {
    const own = polygonOf([outer], place);
    return polygonOf([outer, ...holes.filter(([p]) => p && booleanPointInPolygon(point(place(p)), own))], place);
  });
}

function levels(): { seed: number; level: Level }[] {
  return Array.from({ length: LEVELS }, (_, i) => {
    const [level] = randomPlan(i + 1).levels;
    if (!level) throw new Error('a plan without a level');
    return { seed: i + 1, level };
  });
}

describe('turf, on a patch of the globe as large as the house,', () => {
  it('puts labels and spots into the rooms that the engine puts them into', () => {
    let inside = 0;
    for (const { seed, level } of levels()) {
      const dice = new Dice(seed);
      const model = buildLevel(level);
      const { place, back } = globeOf(level);
      for (const room of model.rooms) {
        const face = polygonOf(room.centerRings, place);
        const labels = level.rooms.filter(({ at }) => booleanPointInPolygon(point(place(at)), face));
        expect(room.labels, `seed ${seed}, ${room.key}`).toEqual(labels);
      }
      const floors = model.rooms.map((room) => ({ room, parts: floorsOf(room, place) }));
      for (let i = 0; i < 40; i++) {
        const p = back([dice.between(-6e-5, 6e-5), dice.between(-6e-5, 6e-5)]);
        const own = floors.find(({ parts }) => parts.some((part) => booleanPointInPolygon(point(place(p)), part)));
        expect(roomAt(model, p)?.key, `seed ${seed}, ${p}`).toBe(own?.room.key);
        if (own) inside++;
      }
    }
    expect(inside).toBeGreaterThan(10 * LEVELS);
  });

  it('finds the floors as large', () => {
    for (const { seed, level } of levels()) {
      const { place } = globeOf(level);
      for (const room of buildLevel(level).rooms) {
        const turfs = floorsOf(room, place).reduce((sum, part) => sum + area(part), 0);
        // Square meters. The formula on the sphere keeps about six digits for such small areas.
        expect(turfs, `seed ${seed}, ${room.key}`).toBeCloseTo(room.floorArea / 1e6, 3);
      }
    }
  });

  it('sees walls cross and meet where the engine has its pieces end', () => {
    let crossings = 0;
    for (const { seed, level } of levels()) {
      const { place, back } = globeOf(level);
      const ends = buildLevel(level).pieces.flatMap(({ from, to }) => [from, to]);
      for (const [s, t] of pairs(level.walls)) {
        const crossing = lineIntersect(lineOf(s, place), lineOf(t, place)).features[0];
        // Coinciding lines have no single crossing: turf returns any point that they share.
        if (!crossing || areParallel(s, t)) continue;
        const [x, y] = back(crossing.geometry.coordinates as [number, number]);
        const off = Math.min(...ends.map((end) => Math.hypot(end[0] - x, end[1] - y)));
        expect(off, `seed ${seed}, ${s.id} and ${t.id} at ${x}, ${y}`).toBeLessThan(0.01);
        crossings++;
      }
    }
    expect(crossings).toBeGreaterThan(10 * LEVELS);
  });
});

function lineOf({ from, to }: Wall, place: Place) {
  return lineString([place(from), place(to)]);
}

function areParallel(s: Wall, t: Wall): boolean {
  return Math.abs(wedge(unit(minus(s.to, s.from)), unit(minus(t.to, t.from)))) < 1e-9;
}

function pairs<T>(list: readonly T[]): [T, T][] {
  return list.flatMap((one, i) => list.slice(i + 1).map((other): [T, T] => [one, other]));
}
