import { numbersOfText } from './numbers-text.ts';
import { PACKED, type PackedPlaces } from './packed-places.ts';

/** A ZIP area or a town. */
export interface Place {
  /** "15213 Pittsburgh, PA", or "Pittsburgh, PA". */
  readonly name: string;
  /** Its middle, degrees north and east; for a town the mean of its ZIP areas. */
  readonly latitude: number;
  readonly longitude: number;
}

export interface FoundPlaces {
  readonly places: readonly Place[];
  /** A remark to show: why there is no place, or that there are more. */
  readonly words: string;
}

interface Town extends Place {
  /** Name in the form of `plainOf`, for comparison. */
  readonly plain: string;
  readonly state: string;
  /** Number of its ZIP codes. */
  readonly size: number;
}

/** Maximum number of listed places. */
const MOST = 6;

const NONE: readonly Place[] = [];
const ELSEWHERE = 'For a place outside the United States enter latitude and longitude.';

/** The list of places, unpacked. */
export class PlaceList {
  private readonly zips: readonly string[];
  private readonly areas: ReadonlyMap<string, Place>;
  private readonly areasByTown: ReadonlyMap<string, readonly Place[]>;
  private unpackedTowns: readonly Town[] | null = null;
  private readonly stateNames: Readonly<Record<string, string>>;

  constructor(packed: PackedPlaces = PACKED) {
    const [latitudes, longitudes] = [packed.latitudes, packed.longitudes].map(numbersOfText) as [number[], number[]];
    const [names, states] = [packed.names, packed.states].map(linesOf) as [string[], string[]];
    const areas = new Map<string, Place>();
    const towns = new Map<string, Place[]>();
    numbersOfText(packed.zips).forEach((number, i) => {
      const zip = String(number).padStart(5, '0');
      const town = `${names[i]}, ${states[i]}`;
      const area = {
        name: `${zip} ${town}`,
        latitude: (latitudes[i] as number) / 100,
        longitude: (longitudes[i] as number) / 100,
      };
      areas.set(zip, area);
      const own = towns.get(town);
      if (own) own.push(area);
      else towns.set(town, [area]);
    });
    this.zips = [...areas.keys()];
    this.areas = areas;
    this.areasByTown = towns;
    this.stateNames = packed.stateNames;
  }

  /** Returns the places that a text may mean: a ZIP code or its first digits, or a town, with its state or without. */
  find(text: string): FoundPlaces {
    const wanted = text.trim();
    if (/^\d[\d\s-]*$/.test(wanted)) return this.byZip(wanted);
    if (/\d/.test(wanted))
      return { places: NONE, words: `"${wanted}" is no US ZIP code: it has 5 digits. ${ELSEWHERE}` };
    return plainOf(wanted).length < 2 ? { places: NONE, words: '' } : this.byTown(wanted);
  }

  private byZip(wanted: string): FoundPlaces {
    const digits = wanted.replace(/[\s-]/g, '');
    if (digits.length > 5 && digits.length !== 9)
      return { places: NONE, words: `"${wanted}" has ${digits.length} digits: a US ZIP code has 5. ${ELSEWHERE}` };
    const zip = digits.slice(0, 5);
    const area = this.areas.get(zip);
    if (area) return { places: [area], words: '' };
    if (zip.length === 5)
      return {
        places: NONE,
        words: `ZIP code ${zip} is not in the list. Check the digits, or type the town, or latitude and longitude.`,
      };
    if (zip.length < 3) return { places: NONE, words: '' };
    const begun = this.zips.filter((each) => each.startsWith(zip));
    if (begun.length === 0)
      return { places: NONE, words: `No ZIP code begins with ${zip}. Check the digits, or type the town.` };
    return {
      places: begun.slice(0, MOST).map((each) => this.areas.get(each) as Place),
      words: moreWords(begun.length),
    };
  }

  /** Built when a town is first searched for. */
  private get towns(): readonly Town[] {
    this.unpackedTowns ??= [...this.areasByTown].flatMap(([name, own]) => townsOf(name, own));
    return this.unpackedTowns;
  }

  private byTown(wanted: string): FoundPlaces {
    const plain = plainOf(wanted);
    const readings = this.readingsOf(plain);
    const found = this.towns.filter((town) =>
      readings.some(({ begin, state }) => town.plain.startsWith(begin) && (state === null || town.state === state)),
    );
    if (found.length === 0)
      return {
        places: NONE,
        words: `No town in the list begins with "${wanted}". Check how it is written, or type its ZIP code. ${ELSEWHERE}`,
      };
    const isWhole = ({ plain: name }: Town) => Number(readings.some(({ begin }) => name === begin));
    const sorted = [...found].sort((a, b) => isWhole(b) - isWhole(a) || b.size - a.size || (a.name < b.name ? -1 : 1));
    const places = sorted.slice(0, MOST).map(({ name, latitude, longitude }) => ({ name, latitude, longitude }));
    return { places, words: moreWords(sorted.length) };
  }

  /** Returns the readings of a text: the whole text as a name, and for each state that it ends with, the rest as a name. */
  private readingsOf(plain: string): readonly { readonly begin: string; readonly state: string | null }[] {
    const states = Object.entries(this.stateNames).flatMap(([state, name]) =>
      [state.toLowerCase(), plainOf(name)]
        .filter((end) => plain.endsWith(` ${end}`))
        .map((end) => ({ begin: plain.slice(0, -end.length - 1), state })),
    );
    return [{ begin: plain, state: null }, ...states];
  }
}

const linesOf = (text: string): string[] => {
  let last = '';
  return text.split('\n').map((line) => {
    last = line || last;
    return last;
  });
};

/** Maximum distance of an area from the middle of its town, degrees. If one is farther, the areas are different towns of the same name. */
const WIDEST = 0.5;

function townsOf(name: string, areas: readonly Place[]): readonly Town[] {
  const comma = name.lastIndexOf(', ');
  const own = { plain: plainOf(name.slice(0, comma)), state: name.slice(comma + 2) };
  const [latitude, longitude] = [
    meanOf(areas.map((each) => each.latitude)),
    meanOf(areas.map((each) => each.longitude)),
  ];
  const isOne = areas.every(
    (area) => Math.abs(area.latitude - latitude) <= WIDEST && Math.abs(area.longitude - longitude) <= WIDEST,
  );
  return isOne
    ? [{ ...own, name, latitude, longitude, size: areas.length }]
    : areas.map((area) => ({ ...own, ...area, size: 1 }));
}

const meanOf = (degrees: readonly number[]): number =>
  Math.round((degrees.reduce((sum, each) => sum + each, 0) / degrees.length) * 100) / 100;

const WRITTEN_OUT: Readonly<Record<string, string>> = { st: 'saint', ste: 'sainte', mt: 'mount', ft: 'fort' };

/** Returns a name in a form for comparison: lower case, no diacritics, a leading "St." and the like written out. */
function plainOf(text: string): string {
  // A short cut for most of the 40,000 names.
  if (/^[A-Z][a-z]{3,}$/.test(text)) return text.toLowerCase();
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[.']/g, '')
    .split(/[^a-z]+/)
    .filter(Boolean)
    .map((word, i, all) => (i === 0 && all.length > 1 ? (WRITTEN_OUT[word] ?? word) : word))
    .join(' ');
}

const moreWords = (count: number): string =>
  count > MOST ? `${count - MOST} more: go on typing, or add the state.` : '';

let unpacked: PlaceList | null = null;

/** Returns the list of places that is built into the app, unpacked once. */
export function placeList(): PlaceList {
  unpacked ??= new PlaceList();
  return unpacked;
}
