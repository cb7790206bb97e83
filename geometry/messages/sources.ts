import { listed } from '../plan/nouns.ts';
import type { Profile, Source, SourceMark } from '../rules/types.ts';

/** Where a figure was read, if not in the primary text. */
const DOUBT: Readonly<Record<SourceMark, string>> = {
  primary: '',
  secondary: 'Not read in the primary text',
  memory: 'From memory, not looked up',
  computed: 'Worked out, not published as such',
  'common-practice': 'Common practice, no published source',
  'our-reading': 'Our reading, no text says it',
};

/** Short forms of `DOUBT`; common practice has none, because its cite says so. */
const SHORT_DOUBT: Readonly<Record<SourceMark, string>> = {
  primary: '',
  secondary: ' (secondary)',
  memory: ' (from memory)',
  computed: ' (worked out)',
  'common-practice': '',
  'our-reading': ' (our reading)',
};

/**
 * Returns a source with its mark, for tables and keys on paper: "EPA 402-R-92-003, 2.3.2 (copy of the text)
 * (secondary)".
 */
export const markedCite = ({ cite, mark }: Source): string =>
  // Some cites contain the mark already.
  cite.startsWith('our reading: ') ? cite : `${cite}${SHORT_DOUBT[mark]}`;

/**
 * Returns the caveats about the sources of a rule, a sentence each: "Not read in the primary text: Minnesota
 * licensing practice (2019), as reported." Empty if every figure was read in its primary text.
 */
export function sourceDoubts(sources: readonly Source[]): readonly string[] {
  return groups(sources, ({ mark }) => mark).map(([mark, list]) => {
    const said =
      mark === 'common-practice' ? commonPractice(list) : list.map(({ cite }) => cite.replace(/^our reading: /, ''));
    return said.length > 0 ? `${DOUBT[mark]}: ${said.join('; ')}.` : `${DOUBT[mark]}.`;
  });
}

/** Returns the parts of a rule that only common practice supports, if it does not support the whole rule: "storage", "garage". */
function commonPractice(list: readonly Source[]): readonly string[] {
  if (list.some(({ of }) => !of)) return [];
  return list.flatMap(({ of = [] }) => of.map((scope) => scope.replaceAll('-', ' ')));
}

/**
 * Returns the sources in a row, then the caveats. Common practice and our interpretations have no text to cite and
 * appear in the caveats only.
 */
export function describeSources(sources: readonly Source[]): string {
  const named = sources.filter(({ mark }) => mark !== 'common-practice' && mark !== 'our-reading');
  return [...new Set(named.map(({ cite }) => `${cite}.`)), ...sourceDoubts(sources)].join(' ');
}

/** Returns the caveats for a whole profile, by rule names: "Not read in the primary text: side by side." */
export function profileDoubts({ rules }: Profile): readonly string[] {
  const marked = rules.flatMap(({ name, sources }) => {
    return [...new Set(sources.map(({ mark }) => mark))].map((mark) => {
      const inPart = sources.every((source) => source.mark !== mark || source.of);
      return { name: `${name.toLowerCase()}${inPart ? ' in part' : ''}`, mark };
    });
  });
  // A profile that was read only in copies gets one caveat as a whole, even if it also has an interpretation of our own.
  const published = rules.filter(({ sources }) => sources.some(({ mark }) => mark !== 'our-reading')).length;
  return groups(marked, ({ mark }) => mark).map(([mark, list]) =>
    list.length === published
      ? `${DOUBT[mark]}: all of it.`
      : `${DOUBT[mark]}: ${listed(list.map(({ name }) => name))}.`,
  );
}

/** Groups by mark, in order of occurrence, without the primary text. */
function groups<T>(
  list: readonly T[],
  markOf: (one: T) => SourceMark,
): readonly (readonly [SourceMark, readonly T[]])[] {
  const found = new Map<SourceMark, T[]>();
  for (const one of list) {
    const mark = markOf(one);
    if (mark !== 'primary') found.set(mark, [...(found.get(mark) ?? []), one]);
  }
  return [...found];
}
