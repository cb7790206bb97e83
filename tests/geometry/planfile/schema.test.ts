import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { structureProblems } from '../../../geometry/planfile/read/structure.ts';
import { howMany } from '../../helpers/how-many.ts';
import { planSchemaText, SCHEMA_FILE } from '../../run/plan-schema.ts';
import { planFile } from './plans.ts';

const published = JSON.parse(readFileSync(SCHEMA_FILE, 'utf8'));
// An independent validator of the published schema, which does not use our definition.
const agreesWithSchema = new Ajv2020({ allErrors: true, strictTypes: false }).compile(published);
const agreesWithReader = (value: unknown) => structureProblems(value).length === 0;

/** Returns every place in a value: the path to each key and index. */
function placesIn(
  value: unknown,
  path: readonly string[] = [],
  places: (readonly string[])[] = [],
): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return places;
  for (const [key, each] of Object.entries(value)) {
    const place = [...path, key];
    places.push(place);
    placesIn(each, place, places);
  }
  return places;
}

const wrong = fc.constantFrom<unknown>(
  null,
  true,
  '',
  'x',
  'auto',
  'pCi/L',
  0,
  -1,
  1,
  2,
  0.5,
  -90.5,
  180.5,
  1e7,
  1.0000001e7,
  -1.1e7,
  1e300,
  Number.POSITIVE_INFINITY,
  [],
  {},
  [0, 0],
  [0, 0, 0],
  [0, '0'],
  [
    [0, 0],
    [1, 0],
  ],
  [
    [0, 0],
    [1, 0],
    [0, 1],
  ],
  [null],
  [{}],
  { circle: { center: [0, 0], radius: 1 } },
  { circle: { center: [0, 0], radius: 1 }, box: null },
  { circle: { center: [0, 0], radius: 1 }, box: { center: [0, 0], width: 0, depth: 0 } },
  { disc: 1 },
  { direction: 0, spread: 361, reach: 0 },
  { direction: 0, spread: 360, reach: 0 },
  '2026-03-07T18:00:00-05:00',
  '2026-03-07t18:00:00z',
  '2026-03-07T18:00:00',
  '2026-02-31T18:00:00Z',
  '2026-03-07 18:00:00Z',
);

type Mutation = {
  readonly where: number;
  readonly how: 'delete' | 'replace' | 'append' | 'add';
  readonly value: unknown;
};
const mutation: fc.Arbitrary<Mutation> = fc.record({
  where: fc.nat(),
  how: fc.constantFrom('delete', 'replace', 'replace', 'replace', 'append', 'add'),
  value: wrong,
});

const shallowCopy = (value: unknown) =>
  (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, unknown>;

/** Returns a copy of the file with one thing changed; unchanged parts are shared. `places` are those of the file. */
function mutated(file: unknown, places: readonly (readonly string[])[], { where, how, value }: Mutation): unknown {
  const path = places[where % places.length] ?? [];
  const key = path.at(-1) ?? '';
  const copy = shallowCopy(file);
  let holder = copy;
  for (const step of path.slice(0, -1)) {
    const part = shallowCopy(holder[step]);
    holder[step] = part;
    holder = part;
  }
  if (how === 'delete' && Array.isArray(holder)) holder.splice(Number(key), 1);
  else if (how === 'delete') delete holder[key];
  else if (how === 'append' && Array.isArray(holder)) holder.push(value);
  else if (how === 'add') holder[Array.isArray(holder) ? key : 'unheard-of'] = value;
  else Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
  return copy;
}

/** Number of plans; each is damaged in twelve ways. */
const DAMAGED_PLANS = howMany(200, 600);

describe('the published JSON Schema', () => {
  it('is not stale: `node tests/run/write-json-schema.mjs` writes it', () => {
    expect(readFileSync(SCHEMA_FILE, 'utf8')).toBe(planSchemaText());
  });

  it('is of draft 2020-12 and has a name of its own', () => {
    expect(published.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(published.$id).toBe('urn:stillspot:plan:1');
    expect(published.title).toBe('Stillspot plan');
  });

  it('accepts every valid plan, as the reader does', () => {
    fc.assert(
      fc.property(planFile, (file) => {
        expect(agreesWithSchema(file), JSON.stringify(agreesWithSchema.errors)).toBe(true);
        expect(structureProblems(file)).toEqual([]);
      }),
      { numRuns: howMany(40, 300) },
    );
  });

  it('accepts and refuses the same files as the structural part of the reader, over thousands of damaged plans', () => {
    const counts = { accepted: 0, refused: 0 };
    fc.assert(
      fc.property(planFile, fc.array(mutation, { minLength: 12, maxLength: 12 }), (file, mutations) => {
        const places = placesIn(file);
        for (const each of mutations) {
          const value = mutated(file, places, each);
          const accepted = agreesWithReader(value);
          if (agreesWithSchema(value) !== accepted) {
            expect.fail(`reader: ${accepted}, schema: ${!accepted}, for ${JSON.stringify(value)}`);
          }
          counts[accepted ? 'accepted' : 'refused'] += 1;
        }
      }),
      // A failure is reported without shrinking: shrinking a whole plan, one change at a time, takes minutes.
      { numRuns: DAMAGED_PLANS, endOnFailure: true },
    );
    // Both outcomes must have occurred, else the agreement means nothing.
    expect(counts.accepted).toBeGreaterThan(0.5 * DAMAGED_PLANS);
    expect(counts.refused).toBeGreaterThan(1.6 * DAMAGED_PLANS);
  });

  it('and of values that are no plan at all', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(agreesWithSchema(value)).toBe(agreesWithReader(value));
      }),
    );
  });

  const circle = { center: [0, 0], radius: 1 };
  const box = { center: [0, 0], width: 1, depth: 1 };
  it.each<[string, unknown, boolean]>([
    ['one shape', { circle }, true],
    ['one shape and a key that no one knows', { circle, color: 'red' }, true],
    ['two shapes at once', { circle, box }, false],
    ['a shape and an empty second one', { circle, box: null }, false],
    ['a shape and a second one that is wrong', { circle, polygon: { points: [] } }, false],
    ['no shape', {}, false],
    ['a shape in a list', [{ circle }], false],
  ])('of a footprint with %s', (_, shape, accepted) => {
    const object = { id: 't1', shape, bottom: 0, top: 0 };
    const level = {
      id: 'L1',
      name: '',
      order: 0,
      ceiling: 1,
      living: 'no',
      ground: 'none',
      walls: [],
      objects: [object],
    };
    const file = { format: 'stillspot-plan', version: 1, levels: [level] };
    expect(agreesWithReader(file)).toBe(accepted);
    expect(agreesWithSchema(file)).toBe(accepted);
  });

  it('says at the same place that something is wrong', () => {
    fc.assert(
      fc.property(planFile, mutation, (file, each) => {
        const value = mutated(file, placesIn(file), each);
        agreesWithSchema(value);
        const theirs = new Set(agreesWithSchema.errors?.map(({ instancePath }) => instancePath));
        for (const { pointer } of structureProblems(value)) {
          // The schema places a missing key, and a third coordinate, at the object or list that contains it.
          const holder = pointer.slice(0, pointer.lastIndexOf('/'));
          expect(theirs.has(pointer) || theirs.has(holder), `${pointer} in ${[...theirs].join(' ')}`).toBe(true);
        }
      }),
      { numRuns: howMany(120, 1000) },
    );
  });
});
