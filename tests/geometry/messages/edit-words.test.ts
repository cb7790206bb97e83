import { describe, expect, it } from 'vitest';
import { duplicatedItems, movedItems, withNewLevel, withoutItems, withoutLevel } from '../../../geometry/edit/index.ts';
import { uncheckedItemPatched } from '../../../geometry/edit/listed-items.ts';
import { withHandleAt } from '../../../geometry/edit/reshape.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeEdit } from '../../../geometry/messages/edit.ts';
import { spokenName } from '../../../geometry/messages/spoken-name.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { sampleText } from '../../helpers/sample-files.ts';

const parsed = parsePlan(sampleText('01-plain-basement'));
if (!parsed.ok) throw new Error('the sample is no plan');
const { plan } = parsed;
const level = plan.levels[0] as Level;
const FOOT = 304.8;
const [a1] = level.detectors;
const [door] = level.openings.filter(({ kind }) => kind === 'door');
const desk = level.objects.find(({ name }) => name === 'Desk');
const sump = level.fixtures.find(({ kind }) => kind === 'sump-pit');

/** Returns the plan of an edit that the reader accepts. */
function done(result: Plan | { readonly ok: boolean; readonly plan?: Plan }): Plan {
  if ('levels' in result) return result;
  if (!result.plan) throw new Error('the edit was refused');
  return result.plan;
}
const words = (after: Plan, before = plan) => describeEdit(before, after, buildLevel);
const patched = (id: string, patch: Readonly<Record<string, unknown>>) =>
  uncheckedItemPatched(plan, level.id, id, patch);

describe('an edit in words', () => {
  it('names what was moved, how far and where to, by the compass', () => {
    const east = done(movedItems(plan, level.id, [a1?.id ?? ''], 3 * FOOT, 0));
    expect(words(east)).toBe(`moved ${a1?.label} 3 ft east`);
    expect(words(plan, east)).toBe(`moved ${a1?.label} 3 ft west`);
    const turned = { ...plan, site: { ...plan.site, north: 90 } };
    const same = done(movedItems(turned, level.id, [a1?.id ?? ''], 3 * FOOT, 0));
    expect(words(same, turned)).toBe(`moved ${a1?.label} 3 ft north`);
    expect(words(done(movedItems(plan, level.id, [a1?.id ?? ''], FOOT, FOOT)))).toBe(
      `moved ${a1?.label} 1 ft 5 in south-east`,
    );
  });

  it('tells what moved together once, and counts more than three', () => {
    const with2 = done(movedItems(plan, level.id, [sump?.id ?? '', a1?.id ?? ''], 0, -FOOT));
    expect(words(with2)).toMatch(/^moved Sump pit and A1 1 ft north$/);
    const all = level.fixtures.map(({ id }) => id);
    expect(words(done(movedItems(plan, level.id, all, FOOT, 0)))).toBe(`moved ${all.length} things 1 ft east`);
  });

  it('names what was deleted and added, a door with its number and its rooms', () => {
    const without = done(withoutItems(plan, level.id, [door?.id ?? '']));
    expect(words(without)).toMatch(/^deleted door 1 of (Family room|Utility room)/);
    expect(words(plan, without)).toMatch(/^added door 1 of /);
    const copies = duplicatedItems(plan, level.id, [desk?.id ?? ''], FOOT, FOOT);
    expect(words(done(copies))).toBe('added Desk');
  });

  it('leaves out the openings that go with their wall, and the walls that only follow', () => {
    const wall = level.walls.find(({ id }) => level.openings.some((one) => one.wall === id));
    const gone = done(withoutItems(plan, level.id, [wall?.id ?? '']));
    expect(words(gone)).toBe(`deleted wall ${level.walls.map((one) => one.id).indexOf(wall?.id ?? '') + 1}`);
    const [first] = level.walls;
    const moved = done(movedItems(plan, level.id, [first?.id ?? ''], 0, -FOOT));
    expect(words(moved)).toMatch(/^moved wall 1 1 ft north/);
    expect(words(moved)).not.toMatch(/changed|door|window/);
  });

  it('says in which direction an opening was moved along its wall', () => {
    const width = door?.width ?? 0;
    const offset = door?.offset ?? 0;
    const there = patched(door?.id ?? '', { width, offset: offset - FOOT });
    const [one, other] = [words(there), words(plan, there)];
    const ways = [one, other].map(
      (text) => /^moved door 1 of .* 1 ft (north|south|east|west)$/.exec(text)?.[1] ?? text,
    );
    expect([
      ['north', 'south'],
      ['south', 'north'],
      ['east', 'west'],
      ['west', 'east'],
    ]).toContainEqual(ways);
  });

  it('names a level without a name in the middle of a sentence', () => {
    const unnamed = { ...plan, levels: [{ ...level, name: ' ' }] };
    expect(words(unnamed)).toBe('renamed the level to the level without a name');
  });

  it('tells the measure that changed, or the new name', () => {
    expect(words(patched(door?.id ?? '', { width: 3 * FOOT, offset: door?.offset }))).toMatch(
      /^door 1 .*is now 3 ft wide$/,
    );
    expect(words(patched(a1?.id ?? '', { base: 3 * FOOT }))).toBe(`${a1?.label} is now 3 ft above the floor`);
    expect(words(patched(a1?.id ?? '', { label: 'B7' }))).toBe(`renamed ${a1?.label} to B7`);
    expect(words(patched(desk?.id ?? '', { name: 'Bench' }))).toBe('renamed Desk to Bench');
    // Both detectors are on it.
    expect(words(patched(desk?.id ?? '', { top: 900 }))).toMatch(
      /^Desk is now up to 2 ft 11 3\/8 in, A1 is now .* above the floor/,
    );
    const [wall] = level.walls;
    const alone = { ...plan, levels: [{ ...emptyLevel(level.id), walls: wall ? [wall] : [] }] };
    const [x, y] = wall?.to ?? [0, 0];
    const longer = withHandleAt(
      alone.levels[0] as Level,
      { kind: 'wall-end', id: wall?.id ?? '', end: 'to', at: [x, y] },
      [x + FOOT, y],
      15,
    );
    expect(words({ ...plan, levels: [longer] }, alone)).toMatch(/^wall 1 is now [0-9].* long$/);
  });

  it('names levels that come and go', () => {
    const more = done(withNewLevel(plan, { ...emptyLevel('L9'), name: 'Attic', order: 9 }));
    expect(words(more)).toBe('added level Attic');
    expect(words(done(withoutLevel(more, 'L9')), more)).toBe('deleted level Attic');
  });

  it('is empty where nothing that is drawn has changed', () => {
    expect(words(plan)).toBe('');
    expect(words({ ...plan, title: 'Other' })).toBe('');
  });
});

describe('the name of an item', () => {
  it('numbers items of one noun, and has none for what is not there', () => {
    const model = buildLevel(level);
    const windows = level.openings
      .filter(({ kind }) => kind === 'window')
      .map(({ id }) => spokenName(level, model, id));
    expect(windows[1]).toMatch(/^window 2 of /);
    expect(spokenName(level, null, door?.id ?? '')).toBe('door 1');
    expect(spokenName(level, model, 'nothing')).toBe('');
  });
});
