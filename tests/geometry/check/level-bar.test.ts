import { describe, expect, it } from 'vitest';
import { levelBar } from '../../../geometry/check/level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { hall, planUnder } from '../../helpers/hall.ts';

/* Why a level is not to be tested: the lowest that counts, or each on the ground, by the list. */

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

  it('of two that are equally low both count', () => {
    const levels = [levelAt(0, { id: 'a', living: 'lived-in' }), levelAt(0, { id: 'b', living: 'lived-in' })];
    for (const id of ['a', 'b']) expect(barOf('home-short-term', 'own-household', levels, id)).toBe('');
  });
});

describe('each level on the ground', () => {
  const elsewhere =
    'This level does not stand on the ground: test the lowest level of each part of the house that does.';

  it.each<[Level['living'], Level['ground'], string]>([
    ['lived-in', 'slab', elsewhere],
    ['could-be', 'basement', elsewhere],
    ['no', 'basement', ''],
    ['lived-in', 'none', ''],
  ])('a level %s on %s: the one above it: "%s"', (living, ground, above) => {
    const levels = [levelAt(0, { living, ground }), levelAt(1, { living: 'lived-in', ground: 'none' })];
    expect(barOf('pennsylvania-240-310', 'own-household', levels, 'L1')).toBe(above);
    expect(barOf('pennsylvania-240-310', 'own-household', levels, 'L0')).toBe(
      living === 'no' ? 'Nobody could live on this level.' : '',
    );
  });
});
