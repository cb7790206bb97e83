import type { FixtureKind, Ground, Level, Living, Purpose, RoomUse } from './model.ts';

/** Nouns for the middle of a sentence; `capital` makes them headings. */
export const FIXTURE_NOUN: Readonly<Record<FixtureKind, string>> = {
  'supply-register': 'supply register',
  'return-grille': 'return grille',
  'exhaust-fan': 'exhaust fan',
  'ceiling-fan': 'ceiling fan',
  'portable-fan': 'portable fan',
  'window-air-conditioner': 'window air conditioner',
  'air-cleaner': 'air cleaner',
  dehumidifier: 'dehumidifier',
  humidifier: 'humidifier',
  furnace: 'furnace',
  boiler: 'boiler',
  'water-heater': 'water heater',
  fireplace: 'fireplace',
  'wood-stove': 'wood stove',
  radiator: 'radiator',
  'space-heater': 'space heater',
  'sump-pit': 'sump pit',
  'floor-drain': 'floor drain',
  washer: 'washer',
  dryer: 'dryer',
  'mitigation-pipe': 'mitigation pipe',
};

export const ROOM_USE_NOUN: Readonly<Record<RoomUse, string>> = {
  'family-room': 'family room',
  'living-room': 'living room',
  bedroom: 'bedroom',
  playroom: 'playroom',
  den: 'den',
  office: 'office',
  'exercise-room': 'exercise room',
  workshop: 'workshop',
  'dining-room': 'dining room',
  unfinished: 'unfinished room',
  kitchen: 'kitchen',
  bathroom: 'bathroom',
  laundry: 'laundry',
  spa: 'spa',
  closet: 'closet',
  storage: 'storage',
  utility: 'utility room',
  stair: 'stair',
  hall: 'hall',
  crawlspace: 'crawl space',
  garage: 'garage',
};

export const LIVING_PHRASE: Readonly<Record<Living, string>> = {
  'lived-in': 'lived in',
  'could-be': 'not lived in, but could be',
  no: 'neither lived in nor fit for it',
};

export const GROUND_PHRASE: Readonly<Record<Ground, string>> = {
  basement: 'basement, below the soil line',
  slab: 'slab on the soil',
  crawlspace: 'over a crawl space',
  none: 'not touching the soil',
};

export const PURPOSE_PHRASE: Readonly<Record<Purpose, string>> = {
  'own-household': 'for the occupants',
  'property-transfer': 'for a sale of the house',
  'after-mitigation': 'after mitigation',
};

/** Returns the text with a capital first letter: "sump pit" → "Sump pit"; "" stays "". */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Returns the text with a small first letter, for the middle of a sentence. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** Returns a level's name, or a phrase for a level without one, for the middle of a sentence. */
export function levelName({ name }: Pick<Level, 'name'>): string {
  return name.trim() || 'the level without a name';
}

/** Returns a level's name as entered, or a capitalized phrase for a level without one, for a heading or the start of a sentence. */
export function levelHeading({ name }: Pick<Level, 'name'>): string {
  return name.trim() || 'The level without a name';
}

/** Returns a list in words: "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** Returns a count in words: "1 wall", "3 walls"; `many` is the plural where it is irregular. */
export function counted(count: number, noun: string, many = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : many}`;
}
