import { listed } from '../plan/nouns.ts';
import type { Profile, Source, SourceMark } from '../rules/types.ts';

/** How a figure was come by, where it was not read in the primary text. */
const DOUBT: Readonly<Record<SourceMark, string>> = {
  primary: '',
  secondary: 'Not read in the primary text',
  memory: 'From memory, not looked up',
  computed: 'Worked out, not published as such',
  'common-practice': 'Common practice, no published source',
  'our-reading': 'Our reading, no text says it',
};

/** The same in a word or two; common practice says it in its cite. */
const SHORT_DOUBT: Readonly<Record<SourceMark, string>> = {
  primary: '',
  secondary: ' (secondary)',
  memory: ' (from memory)',
  computed: ' (worked out)',
  'common-practice': '',
  'our-reading': ' (our reading)',
};

/** A source as a table or a key on paper names it, with how it was come by: "EPA 402-R-92-003, 2.3.2 (copy of the text) (secondary)". */
export const markedCite = ({ cite, mark }: Source): string => `${cite}${SHORT_DOUBT[mark]}`;

/**
 * What the sources of a rule leave in doubt, a sentence each: "Not read in the primary text: Minnesota licensing practice (2019), as
 * reported." Empty where every figure was read where it is published.
 */
export function sourceDoubts(sources: readonly Source[]): readonly string[] {
  return groups(sources, ({ mark }) => mark).map(([mark, list]) => {
    const said = mark === 'common-practice' ? habits(list) : list.map(({ cite }) => cite.replace(/^our reading: /, ''));
    return said.length > 0 ? `${DOUBT[mark]}: ${said.join('; ')}.` : `${DOUBT[mark]}.`;
  });
}

/** What a habit alone speaks for, where it is not the whole rule: "storage", "garage". */
function habits(list: readonly Source[]): readonly string[] {
  if (list.some(({ of }) => !of)) return [];
  return list.flatMap(({ of = [] }) => of.map((scope) => scope.replaceAll('-', ' ')));
}

/** The sources in a row, and what they leave in doubt after them. Common practice and our reading are no texts to name: only the doubt says them. */
export function sourceWords(sources: readonly Source[]): string {
  const named = sources.filter(({ mark }) => mark !== 'common-practice' && mark !== 'our-reading');
  return [...new Set(named.map(({ cite }) => `${cite}.`)), ...sourceDoubts(sources)].join(' ');
}

/** The same for a whole list, by the names of its rules: "Not read in the primary text: side by side." */
export function profileDoubts({ rules }: Profile): readonly string[] {
  const marked = rules.flatMap(({ name, sources }) => {
    return [...new Set(sources.map(({ mark }) => mark))].map((mark) => {
      const inPart = sources.every((source) => source.mark !== mark || source.of);
      return { name: `${name.toLowerCase()}${inPart ? ' in part' : ''}`, mark };
    });
  });
  // Of a list that was read in copies only all is doubted, though we add a reading of our own.
  const published = rules.filter(({ sources }) => sources.some(({ mark }) => mark !== 'our-reading')).length;
  return groups(marked, ({ mark }) => mark).map(([mark, list]) =>
    list.length === published
      ? `${DOUBT[mark]}: all of it.`
      : `${DOUBT[mark]}: ${listed(list.map(({ name }) => name))}.`,
  );
}

/** By mark, in the order in which they come; what was read in the primary text is left out. */
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
