import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { smallFile } from './plans.ts';

export type Json = Readonly<Record<string, unknown>>;

/** Returns "pointer: sentence" for every problem of a text. */
export function problemsOf(text: string): string[] {
  const read = parsePlan(text);
  return read.ok ? [] : read.problems.map(({ pointer, message }) => `${pointer}: ${message}`);
}
export const problemsIn = (file: unknown) => problemsOf(JSON.stringify(file));

export const wall = { id: 'w1', from: [0, 0], to: [3048, 0], thickness: 101.6 };
export const window = { id: 'o1', wall: 'w1', kind: 'window', offset: 0, width: 914.4, bottom: 1200, top: 2000 };
export const desk = { id: 't1', name: 'Desk', shape: { circle: { center: [0, 0], radius: 1 } }, bottom: 0, top: 762 };
export const detector = { id: 'd1', at: [0, 0], base: 762, radius: 50.8, tall: 25.4 };
export const level = (change: Json = {}): Json => ({
  id: 'L1',
  name: 'Basement',
  order: 0,
  ceiling: 2286,
  living: 'lived-in',
  ground: 'basement',
  walls: [wall],
  ...change,
});
export const onLevel = (change: Json) => smallFile({ levels: [level(change)] });
export const polygon = (...points: readonly (readonly [number, number])[]) =>
  onLevel({ objects: [{ ...desk, shape: { polygon: { points } } }] });
