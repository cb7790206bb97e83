import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { mergedRows, packPlaces, zipRows } from '../../../../src/platform/places/pack-places.ts';

const line = (zip: string, name: string, latitude: number, longitude: number, state = 'PA') =>
  ['US', zip, name, state && 'Pennsylvania', state, 'County', '001', '', '', latitude, longitude, '4'].join('\t');
const area = (latitude: number, longitude: number) => ({ latitude, longitude });

describe('the two tables merged', () => {
  it('take the middle of an area from the first, its name from the second', () => {
    expect(mergedRows({ '15213': area(40.44, -79.95) }, line('15213', 'Pittsburgh', 40.4, -79.9))).toEqual([
      { zip: '15213', name: 'Pittsburgh', state: 'PA', stateName: 'Pennsylvania', latitude: 40.44, longitude: -79.95 },
    ]);
  });

  it('leave a ZIP code out where they have it in two places and no other area of the town tells which is right', () => {
    const areas = { '15213': area(40.44, -79.95) };
    expect(mergedRows(areas, line('15213', 'Pittsburgh', 43, -79.95))).toEqual([]);
    const town = {
      '15201': area(43, -80),
      '15202': area(43.1, -80),
      '15213': area(40.44, -79.95),
      '15203': area(43, -79.9),
    };
    const names = Object.keys(town).map((zip) => line(zip, 'Pittsburgh', 43, -79.95));
    expect(mergedRows(town, names.join('\n')).map(({ zip, latitude }) => [zip, latitude])).toEqual([
      ['15201', 43],
      ['15202', 43.1],
      ['15203', 43],
      ['15213', 43],
    ]);
  });

  it('have a post office without an area near others of its first three digits only, and no addresses abroad', () => {
    const areas = { '15213': area(40.44, -79.95) };
    const lines = [
      line('15213', 'Pittsburgh', 40.44, -79.95),
      line('15299', 'Pittsburgh', 40.5, -80),
      line('15298', 'Lost', 48, -80),
      line('09001', 'APO AA', 38.11, 15.66, ''),
    ];
    expect(mergedRows(areas, lines.join('\n')).map(({ zip }) => zip)).toEqual(['15213', '15299']);
  });

  it('have territories by the name of the territory', () => {
    expect(mergedRows({ '00901': area(18.47, -66.11) }, '')).toMatchObject([{ name: 'Puerto Rico', state: 'PR' }]);
  });
});

it('the whole table holds every state, each ZIP code once and within the country, in at most 225 kB compressed', () => {
  const rows = zipRows();
  expect(rows.length).toBeGreaterThan(40_000);
  expect(new Set(rows.map(({ zip }) => zip)).size).toBe(rows.length);
  // 50 states, the District of Columbia, and the five territories.
  expect(new Set(rows.map(({ state }) => state)).size).toBe(56);
  const far = rows.filter(({ state, latitude, longitude }) => {
    const isHome = !['AK', 'HI', 'PR', 'VI', 'AS', 'MP', 'GU'].includes(state);
    return isHome && (latitude < 24.4 || latitude > 49.5 || longitude < -124.8 || longitude > -66.9);
  });
  expect(far).toEqual([]);
  expect(gzipSync(JSON.stringify(packPlaces(rows))).length).toBeLessThan(225_000);
});
