import { describe, expect, it } from 'vitest';
import { GLOSSARY } from '../src/protocol/glossary.ts';
import { shownTexts, textsOfSource } from './helpers/shown-texts.ts';

/** British forms, verse, inversions, promises and words of no trade. */
const PLAIN_WORDS: readonly string[] = [
  ...['fortnight', 'whilst', 'torch', 'cupboard', 'tick', 'anew', 'reckon', 'breadth', 'storey', 'upstairs'],
  ...['colour', 'colours', 'centre', 'metre', 'metres', 'grey', 'favour', 'mould', 'programme', 'cheque', 'afterwards'],
  ...['dear', 'spoilt', 'slip of', 'ghost', 'verse', 'calm about', 'some body', 'hither', 'thereof', 'wherein', 'amid'],
  ...['nobody is blamed', 'nothing needs fixing', 'all-clear', 'guaranteed', 'perfectly safe'],
  ...[
    'goes for good',
    'take the last step back',
    'stands on the shelf',
    'of a morning',
    'by and by',
    'round the walls',
  ],
];

interface Exception {
  readonly word: string;
  /** In texts of these files only. */
  readonly path: RegExp;
  readonly reason: string;
}

/** A code word, such as an id or a key of a file, is one lower-case word without a space. */
function isShown(text: string): boolean {
  return /\s/.test(text) || /^[A-Z]/.test(text);
}

const EXCEPTIONS: readonly Exception[] = [
  { word: 'on the shelf', path: /^src\/quick-card\/card-texts\.ts$/, reason: 'a shelf on a wall of the house' },
  { word: 'does not count', path: /^geometry\/planfile\/schema\/plan\.ts$/, reason: 'the sun near the horizon' },
];

const TEXTS = shownTexts().filter(({ text }) => isShown(text));

const banned = [...new Set([...GLOSSARY.flatMap(({ replaces }) => replaces), ...PLAIN_WORDS])];
const pattern = (word: string) => new RegExp(`(?<![\\w-])${word}(?![\\w-])`, 'i');

describe('the glossary', () => {
  it('has one entry for each term, and no word that two terms replace or that is a term itself', () => {
    const terms = GLOSSARY.map(({ term }) => term.toLowerCase());
    const words = GLOSSARY.flatMap(({ replaces }) => replaces);
    expect(new Set(terms).size).toBe(terms.length);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    expect(words.filter((word) => terms.includes(word))).toEqual([]);
    for (const { means, source } of GLOSSARY) expect([means.endsWith('.'), source.length > 0]).toEqual([true, true]);
  });

  it('is kept by every text that can be shown', () => {
    const texts = TEXTS.filter(({ path }) => path !== 'src/protocol/glossary.ts');
    expect(texts.length).toBeGreaterThan(3000);
    const found = banned.flatMap((word) =>
      texts
        .filter(({ path, text }) => pattern(word).test(text) && !isExcepted(word, path))
        .map(({ path, line, text }) => `${word}: ${path}:${line}: ${text.slice(0, 120)}`),
    );
    expect(found).toEqual([]);
  });

  it('has no space before a percent sign', () => {
    const found = TEXTS.filter(({ text }) => /(?:[\d…}]|^)\s+%(?!\w)/.test(text));
    expect(found.map(({ path, line, text }) => `${path}:${line}: ${text.slice(0, 120)}`)).toEqual([]);
  });

  it('lets no name of the code into a sentence', () => {
    // pCi/L, mSv, kBq: units. Keys of the plan file are named where the file is described.
    const code = /(?<![\w/.`"$-])(?!pCi\b|viewBox\b)[a-z]{3,}[A-Z][a-z]\w*/;
    const found = TEXTS.filter(({ path, text }) => !path.startsWith('geometry/planfile/') && code.test(text));
    expect(found.map(({ path, line, text }) => `${path}:${line}: ${text.slice(0, 120)}`)).toEqual([]);
  });

  it('has no exception that nothing needs', () => {
    const idle = EXCEPTIONS.filter(
      ({ word, path }) => !TEXTS.some((each) => path.test(each.path) && pattern(word).test(each.text)),
    );
    expect(idle).toEqual([]);
  });
});

const isExcepted = (word: string, path: string) =>
  EXCEPTIONS.some((each) => each.word === word && each.path.test(path));

describe('the gathering of texts', () => {
  it('finds literals, templates, JSX and attributes with words, and no code', () => {
    const source = [
      "import x from 'fetched';",
      "const a: 'posted' = 'One two';",
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the source of a template
      'const b = `Three ${a} four`;',
      "const c = <p className=\"set out\" title='Five six'>Seven {'eight nine'}</p>;",
    ].join('\n');
    expect(textsOfSource('a.tsx', source).map(({ text }) => text)).toEqual([
      'One two',
      'Three … four',
      'Five six',
      'Seven ',
      'eight nine',
    ]);
  });
});
