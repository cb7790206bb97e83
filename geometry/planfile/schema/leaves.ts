import * as v from 'valibot';

/**
 * The building blocks of the plan file's schema. The message of each leaf says what is expected at its place
 * ("a number of mm, 0 to 10000000"): one text for a wrong type, a value out of range and a missing key.
 */

/** The greatest coordinate or length, mm: 10 km, far beyond any house; doubles still resolve 2e-9 mm there. */
const LARGEST = 1e7;

/** The format of an instant; whether the date exists is checked as meaning. */
export const INSTANT_PATTERN = /^\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(?:\.\d+)?(?:[Zz]|[+-]\d{2}:\d{2})$/;
export const INSTANT_WORDS = 'a date and time with an offset, like 2026-03-07T18:00:00-05:00';

/** A number in a closed range. */
export function numberFrom(least: number, most: number, of: string) {
  const words = `${of}, ${least} to ${most}`;
  return v.pipe(v.number(words), v.minValue(least, words), v.maxValue(most, words));
}

/** A number above zero. */
export function numberAboveZero(of: string, most = LARGEST) {
  const words = `${of}, more than 0, at most ${most}`;
  return v.pipe(v.number(words), v.gtValue(0, words), v.maxValue(most, words));
}

/** The greatest height, depth or clearance of a thing in a house, mm: 100 m. A larger number is in the wrong unit. */
export const LARGEST_IN_HOUSE = 100_000;

export const coordinate = () => numberFrom(-LARGEST, LARGEST, 'a number of mm');
/** A height above the floor; negative for a pit. */
export const height = () => numberFrom(-LARGEST_IN_HOUSE, LARGEST_IN_HOUSE, 'a number of mm');
export const length = (most = LARGEST) => numberFrom(0, most, 'a number of mm');
export const lengthAboveZero = (most = LARGEST) => numberAboveZero('a number of mm', most);
export const angle = () => numberFrom(-LARGEST, LARGEST, 'a number of degrees');
/** The greatest length of a name or label, and of other texts, in Unicode code points. */
const LONGEST_NAME = 200;
const LONGEST_TEXT = 10_000;
/** The greatest length of a list. */
export const LONGEST_LIST = 100_000;

/** A text of one line. */
export const text = () => v.pipe(v.string('text'), ...atMostCharacters(LONGEST_TEXT));
/** A name or a label: a text of one line. */
export const name = () => v.pipe(v.string('text'), ...atMostCharacters(LONGEST_NAME));
/** Marks text that may have several lines; only the reader uses it. */
export const SEVERAL_LINES = v.metadata<string, Record<string, never>>({});

/** A text of several lines: the reader keeps its line ends. */
export const note = () => v.pipe(v.string('text'), ...atMostCharacters(LONGEST_TEXT), SEVERAL_LINES);
export const id = () => filledText('an id: text that is not empty');

export function filledText(words: string) {
  return v.pipe(v.string(words), v.minLength(1, words), ...atMostCharacters(LONGEST_TEXT));
}

/** JSON Schema counts code points and valibot's `maxLength` UTF-16 units; this check makes both agree. */
function atMostCharacters(most: number) {
  const words = `at most ${most.toLocaleString('en-US')} characters`;
  const fits = (value: string) => value.length <= most || (value.length <= 2 * most && [...value].length <= most);
  return [v.check(fits, words), v.metadata<string, { maxLength: number }>({ maxLength: most })] as const;
}

export function oneOf<const T extends readonly string[]>(options: T) {
  return v.picklist(options, `one of ${options.map((option) => `"${option}"`).join(', ')}`);
}

/** An instant or null; null by default. */
export const instant = () => nullWhenUnknown(instantText());
/** An instant or null; the key may be missing and has no default. */
export const instantOrNull = () => v.nullable(instantText());
const instantText = () => v.pipe(v.string(INSTANT_WORDS), v.regex(INSTANT_PATTERN, INSTANT_WORDS));

/** The value or null; null by default. */
export function nullWhenUnknown<T extends v.GenericSchema>(schema: T) {
  return v.optional(v.nullable(schema), null);
}

export function list<T extends v.GenericSchema>(item: T, words: string, most = LONGEST_LIST) {
  return v.pipe(v.array(item, words), v.maxLength(most, `at most ${most.toLocaleString('en-US')} entries`));
}

/** A list, empty by default. */
export function listOrNone<T extends v.GenericSchema>(item: T, words: string, most = LONGEST_LIST) {
  return v.optional(list(item, words, most), []);
}

/** An object that preserves unknown keys. Unlike valibot's own, it rejects arrays. */
export function record<const E extends v.ObjectEntries>(entries: E, words: string): v.LooseObjectSchema<E, string> {
  const schema = v.looseObject(entries, words);
  return {
    ...schema,
    '~run': (dataset, config) =>
      schema['~run'](Array.isArray(dataset.value) ? { value: undefined, typed: false } : dataset, config),
  };
}

/** Adds a description to a schema for the published JSON Schema. */
export function about<const T extends v.GenericSchema>(schema: T, description: string) {
  return v.pipe(schema, v.description(description));
}
