import { FIXTURE_KINDS, type FixtureKind, type Mm } from '../plan/model.ts';
import type { Profile, Rule, Source } from './types.ts';

/** Converts inches to millimeters, rounded to the precision of a file: 24 in is 609.6, not 609.5999999999999. */
export const inches = (count: number): Mm => Math.round(count * 254_000) / 10_000;
export const feet = (count: number): Mm => inches(count * 12);
export const centimeters = (count: number): Mm => count * 10;

/** 2,000 sq ft in mm². */
export const TWO_THOUSAND_SQUARE_FEET = 2000 * 304.8 * 304.8;

/**
 * The group in which the published texts count a kind of fixture. Every kind has a row: a kind missing from the lists below would
 * count as an object, which needs 4 in where a fan, for example, needs 3 ft.
 */
type Family = 'duct' | 'air-machine' | 'heater' | 'wet-or-open-to-soil' | 'washer' | 'object';
const FAMILY: Readonly<Record<FixtureKind, Family>> = {
  'supply-register': 'duct',
  'return-grille': 'duct',
  'exhaust-fan': 'air-machine',
  'ceiling-fan': 'air-machine',
  'portable-fan': 'air-machine',
  'window-air-conditioner': 'air-machine',
  'air-cleaner': 'air-machine',
  dehumidifier: 'air-machine',
  humidifier: 'air-machine',
  furnace: 'heater',
  boiler: 'heater',
  'water-heater': 'heater',
  fireplace: 'heater',
  'wood-stove': 'heater',
  radiator: 'heater',
  'space-heater': 'heater',
  'sump-pit': 'wet-or-open-to-soil',
  'floor-drain': 'wet-or-open-to-soil',
  washer: 'washer',
  dryer: 'washer',
  'mitigation-pipe': 'object',
};

const kindsOf = (family: Family): readonly FixtureKind[] => FIXTURE_KINDS.filter((kind) => FAMILY[kind] === family);

export const DUCTS = kindsOf('duct');
export const AIR_MACHINES = kindsOf('air-machine');
export const HEATERS = kindsOf('heater');
export const WASHERS = kindsOf('washer');

/** The part of a rule that is the same in all profiles; a profile adds limits and sources. */
type Frame = Pick<Rule, 'id' | 'name' | 'says' | 'measured'> & { readonly absent?: string };
type Limits = { readonly least?: Mm; readonly most?: Mm };

/** Returns a row of a profile. An omitted limit is one that the text does not give. */
export function rule(frame: Frame, subject: Rule['subject'], limits: Limits, ...sources: readonly Source[]): Rule {
  return { absent: null, ...frame, subject, least: limits.least ?? null, most: limits.most ?? null, sources };
}

/** Returns the subject of the rule on objects beside and above. `profile` fills in the fixtures. */
export const objects = (walls: boolean): Rule['subject'] => ({ of: 'object', walls, fixtures: [] });

/**
 * Returns a profile whose object rule counts every kind of fixture that no other of its rules names: a mitigation pipe
 * obstructs as a box does.
 */
export function profile(listed: Profile): Profile {
  const named = new Set(listed.rules.flatMap(({ subject }) => (subject.of === 'fixture' ? subject.kinds : [])));
  const fixtures = FIXTURE_KINDS.filter((kind) => !named.has(kind));
  const rules = listed.rules.map((row): Rule => {
    return row.subject.of === 'object' ? { ...row, subject: { ...row.subject, fixtures } } : row;
  });
  return { ...listed, rules };
}

export const HABIT: Source = { cite: 'common practice, no published source', mark: 'common-practice' };

/** Returns a source for our own interpretation where a text is silent, for part of a rule or all of it. */
export function ourReading(what: string, of?: Source['of']): Source {
  return { cite: `our reading: ${what}`, mark: 'our-reading', ...(of && { of }) };
}

/** Every text presumes that something supports the detector; a drawing has to state it. */
export const SUPPORT_SOURCE = ourReading('something has to carry it');

export const FRAME = {
  room: {
    id: 'room-use',
    name: 'Room',
    says: 'A room that people use, and not a damp, closed-off or passage room',
    measured: 'none',
  },
  lowest: {
    id: 'level',
    name: 'Level',
    says: 'The lowest level that is lived in, or in a sale could be',
    measured: 'none',
  },
  lowestLivedIn: {
    id: 'level',
    name: 'Level',
    says: 'The lowest level that is lived in',
    measured: 'none',
  },
  eachOnGround: {
    id: 'level',
    name: 'Level',
    says: 'The lowest level fit to live in of every part of the house that stands on the ground',
    measured: 'none',
  },
  height: {
    id: 'height-band',
    name: 'Height above the floor',
    says: 'In the breathing zone, above the floor and below head height',
    measured: 'height',
  },
  ceiling: { id: 'ceiling', name: 'Ceiling', says: 'Below the ceiling', measured: 'height' },
  opening: {
    id: 'outside-opening',
    name: 'Exterior doors and windows',
    says: 'Away from exterior doors and windows',
    measured: 'plan',
    absent: 'No exterior door, window or passage',
  },
  outsideWall: { id: 'outside-wall', name: 'Exterior walls', says: 'Away from the exterior walls', measured: 'plan' },
  insideWall: { id: 'inside-wall', name: 'Interior walls', says: 'Away from the interior walls', measured: 'plan' },
  air: {
    id: 'moving-air',
    name: 'Moving air',
    says: 'Away from registers, grilles, fans and other air-moving devices, and out of their airflow',
    measured: 'plan',
    absent: 'No register, grille, fan or other air-moving device',
  },
  ducts: {
    id: 'moving-air',
    name: 'Ducts and moving air',
    says: 'Away from registers and grilles, and out of any direct airflow',
    measured: 'plan',
    absent: 'No register, grille, fan or other air-moving device',
  },
  running: {
    id: 'running-machine',
    name: 'Devices that must be off',
    says: 'Fans, air cleaners, humidifiers, dehumidifiers and window units nearby stay off',
    measured: 'plan',
  },
  heat: { id: 'heat', name: 'Heat', says: 'Away from heat sources', measured: 'plan', absent: 'No heat source' },
  sun: {
    id: 'direct-sun',
    name: 'Direct sun',
    says: 'Away from where direct sun falls during the test',
    measured: 'plan',
    absent: 'No direct sun where a detector stands',
  },
  sump: { id: 'sump', name: 'Sump pit', says: 'Away from the sump pit', measured: 'plan', absent: 'No sump pit' },
  drain: {
    id: 'floor-drain',
    name: 'Floor drain',
    says: 'Away from the floor drain',
    measured: 'plan',
    absent: 'No floor drain',
  },
  washer: {
    id: 'washer-dryer',
    name: 'Washer and dryer',
    says: 'Away from the washer and the dryer',
    measured: 'plan',
  },
  object: {
    id: 'object',
    name: 'Objects and interior walls',
    says: 'Clear of objects and other detectors beside and above, and of interior walls',
    measured: 'space',
  },
  objectOnly: {
    id: 'object',
    name: 'Objects',
    says: 'Clear of objects and other detectors beside and above',
    measured: 'space',
  },
  support: {
    id: 'support',
    name: 'What carries it',
    says: 'Something carries it: a piece of furniture under its whole foot, a stand, or a hook above',
    measured: 'none',
  },
  companion: {
    id: 'companion',
    name: 'Side by side',
    says: 'The detectors of a pair side by side in one room, at one height, neither touching nor apart',
    measured: 'plan',
  },
} as const satisfies Record<string, Frame>;
