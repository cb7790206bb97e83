import { describe, expect, it } from 'vitest';
import { levelBar } from '../../../geometry/check/level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

/* Why a level is not to be tested: depending on the profile, only the lowest level that counts is, or each on the ground. */

const levelAt = (order: number, change: Partial<Level>): Level => hall({ id: `L${order}`, order, ...change });

function barOf(list: string, purpose: Plan['site']['purpose'], levels: readonly Level[], id: string): string {
  const plan = planUnder(list, levels);
  const level = levels.find((one) => one.id === id);
  if (!level) throw new Error(`no level ${id}`);
  return levelBar({ ...plan, site: { ...plan.site, purpose } }, level);
}

describe('the lowest level that counts', () => {
  const cellar = (living: Level['living']) => levelAt(-1, { name: 'Cellar', living });
  const floor = levelAt(0, { name: 'Floor', living: 'lived-in' });
  const lived = (order: number) => levelAt(order, { name: `Level ${order}`, living: 'lived-in' });

  it.each<[Level['living'], Plan['site']['purpose'], string, string]>([
    ['no', 'own-household', 'This level is not lived in.', ''],
    ['no', 'property-transfer', 'Nobody could live on this level.', ''],
    ['could-be', 'own-household', 'This level is not lived in.', ''],
    ['could-be', 'property-transfer', '', 'Cellar is lower and could be lived in: test there.'],
    ['lived-in', 'own-household', '', 'Cellar is lower and is lived in: test there.'],
    ['lived-in', 'property-transfer', '', 'Cellar is lower and could be lived in: test there.'],
  ])('a cellar %s, purpose %s: "%s", above it "%s"', (living, purpose, below, above) => {
    const levels = [cellar(living), floor];
    expect(barOf('home-short-term', purpose, levels, 'L-1')).toBe(below);
    expect(barOf('home-short-term', purpose, levels, 'L0')).toBe(above);
  });

  it('that has no name is called a level', () => {
    const levels = [levelAt(-1, { name: '', living: 'lived-in' }), floor];
    expect(barOf('home-short-term', 'own-household', levels, 'L0')).toBe(
      'A level is lower and is lived in: test there.',
    );
  });

  it('is named where two levels are lower, in any order of the file', () => {
    const levels = [levelAt(2, { id: 'top', living: 'lived-in' }), ...[1, -1, 0].map((order) => lived(order))];
    expect(barOf('home-short-term', 'own-household', levels, 'top')).toBe(
      'Level -1 is lower and is lived in: test there.',
    );
  });

  it('of two that are equally low both count', () => {
    const levels = [levelAt(0, { id: 'a', living: 'lived-in' }), levelAt(0, { id: 'b', living: 'lived-in' })];
    for (const id of ['a', 'b']) expect(barOf('home-short-term', 'own-household', levels, id)).toBe('');
  });
});

describe('the lowest level that is lived in (Health Canada)', () => {
  it('is the same in a sale: a level that could be lived in is not tested', () => {
    const levels = [
      levelAt(0, { name: 'Cellar', living: 'could-be' }),
      levelAt(1, { name: 'Floor', living: 'lived-in' }),
      levelAt(2, { living: 'lived-in' }),
    ];
    for (const purpose of ['own-household', 'property-transfer', 'after-mitigation'] as const)
      expect(['L0', 'L1', 'L2'].map((id) => barOf('health-canada-long-term', purpose, levels, id))).toEqual([
        'This level is not lived in.',
        '',
        'Floor is lower and is lived in: test there.',
      ]);
  });
});

describe('the second computation', () => {
  const LIVING = ['lived-in', 'could-be', 'no'] as const;
  const GROUND = ['basement', 'slab', 'none'] as const;
  const pairs = LIVING.flatMap((a) => LIVING.map((b) => [a, b] as const));
  const grounds = GROUND.flatMap((a) => GROUND.map((b) => [a, b] as const));

  it.each(PROFILES.map(({ id }) => id))('comes to the same for every two levels: %s', (list) => {
    for (const purpose of ['own-household', 'property-transfer'] as const)
      for (const upper of [0, 1])
        for (const living of pairs)
          for (const ground of grounds) {
            const levels = ([0, 1] as const).map((i) =>
              hall({
                id: `L${i}`,
                order: i * upper,
                living: living[i],
                ground: ground[i],
                detectors: [hallDetector({ id: `d${i}`, base: 900 })],
              }),
            );
            const plan = planUnder(list, levels);
            const asked = { ...plan, site: { ...plan.site, purpose } };
            const again = recheck(asked);
            if (!again.ok) throw new Error(again.cause);
            const second = again.levels.map(({ detectors }) =>
              detectors[0]?.checks.find(({ rule }) => rule === 'level'),
            );
            expect(
              second.map((row) => row?.verdict),
              JSON.stringify({ purpose, upper, living, ground }),
            ).toEqual(levels.map((level) => (levelBar(asked, level) ? 'blocked' : 'clear')));
          }
  });
});

describe('each level on the ground', () => {
  const elsewhere =
    'This level does not stand on the ground: test the lowest level of each part of the house that does.';

  it.each<[Level['living'], Level['ground'], string]>([
    ['lived-in', 'slab', elsewhere],
    ['could-be', 'basement', elsewhere],
    ['no', 'basement', ''],
    ['lived-in', 'none', 'Below is lower and could be lived in: test there.'],
  ])('a level %s on %s: the one above it: "%s"', (living, ground, above) => {
    const levels = [levelAt(0, { name: 'Below', living, ground }), levelAt(1, { living: 'lived-in', ground: 'none' })];
    expect(barOf('pennsylvania-240-310', 'own-household', levels, 'L1')).toBe(above);
    expect(barOf('pennsylvania-240-310', 'own-household', levels, 'L0')).toBe(
      living === 'no' ? 'Nobody could live on this level.' : '',
    );
  });
});
