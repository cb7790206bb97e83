import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { type FiledPlan, readLibraryFile, writeLibraryFile } from '../../../../src/storage/library/library-file.ts';

const sample = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!sample.ok) throw new Error('the sample is no plan');
const TEXT = writePlan(sample.plan);
const PICTURE = `data:image/png;base64,${'A'.repeat(9000)}`;
/** With a key that no version of Stillspot knows, and a picture. */
const TRACED = TEXT.replace('"levels"', `"sketch": { "image": "${PICTURE}" },\n  "levels"`);

const filed = (id: string, text = TEXT, versions: FiledPlan['versions'] = []): FiledPlan => ({
  id,
  createdAt: 1000,
  changedAt: 2000,
  binnedAt: null,
  text,
  versions,
});
const written = (...plans: FiledPlan[]) => writeLibraryFile(plans, 5000);
const places = (text: string) => {
  const read = readLibraryFile(text);
  return read.ok ? [] : read.problems.map(({ place }) => place);
};

describe('a file with the whole shelf', () => {
  it('reads back as it was, pictures and unknown keys included, each picture stored once for its versions', () => {
    const versions = [1, 2, 3].map((at) => ({
      at,
      why: 'rest' as const,
      text: TRACED.replace('Finch', `Finch ${at}`),
    }));
    const canonical = parsePlan(TRACED);
    if (!canonical.ok) throw new Error('no plan');
    const traced = writePlan(canonical.plan);
    const text = written(filed('a', traced, versions), { ...filed('b'), binnedAt: 3000 });
    const read = readLibraryFile(text);
    expect(read.ok && read.plans.map(({ plan: _, ...rest }) => rest)).toEqual([
      filed('a', traced, versions),
      { ...filed('b'), binnedAt: 3000 },
    ]);
    expect(text.split(PICTURE)).toHaveLength(3); // in the plan itself, and once for all versions
  });

  it('with a plan that nests as deep as a plan may', () => {
    const deep = `${'['.repeat(199)}${']'.repeat(199)}`;
    const text = TEXT.replace('"levels"', `"own": ${deep},\n  "levels"`);
    expect(parsePlan(text).ok).toBe(true);
    expect(places(written(filed('a', text), filed('b')))).toEqual([]);
  });

  it('of an empty shelf is one too', () => {
    expect(readLibraryFile(written())).toEqual({ ok: true, plans: [] });
  });

  const good = written(filed('a', TEXT, [{ at: 1, why: 'file', text: TRACED }]), filed('b'));
  it.each([
    ['nothing', '', ['the whole file']],
    ['half of it', good.slice(0, good.length / 2), ['the whole file']],
    ['a plan file', TEXT, ['/format']],
    ['a list', '[]', ['/format']],
    ['a newer version', good.replace('"version": 1', '"version": 2'), ['/version']],
    ['no version', good.replace('"version": 1, ', ''), ['/version']],
    ['a time that is none', good.replace('"createdAt":1000', '"createdAt":"noon"'), ['/plans/0/createdAt']],
    ['one plan twice', written(filed('a'), filed('a')), ['/plans/1/id']],
    ['an id that no address could hold', good.replace('"id":"b"', '"id":"../b"'), ['/plans/1/id']],
    ['a picture that is missing', good.replace(/"pictures": \{.*\}/, '"pictures": {} }'), ['/plans/0/versions/0/long']],
    [
      'a damaged plan and a damaged version',
      good.replaceAll('"ceiling": 2286', '"ceiling": -5').replaceAll('\\"ceiling\\": 2286', '\\"ceiling\\": 0'),
      [
        '/plans/0/versions/0, in its plan at /levels/0/ceiling',
        '/plans/0/plan/levels/0/ceiling',
        '/plans/1/plan/levels/0/ceiling',
      ],
    ],
  ])('is refused with %s', (_, text, expected) => {
    expect(places(text)).toEqual(expected);
  });

  it('of a newer version says so', () => {
    const read = readLibraryFile(good.replace('"version": 1', '"version": 2'));
    expect(read.ok ? [] : read.problems).toEqual([
      { place: '/version', found: '2', expected: '1; open the file with a newer Stillspot' },
    ]);
  });
});
