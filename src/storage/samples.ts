/** A plan of an invented house that ships with the app; `shows` says what it demonstrates. */
export interface Sample {
  readonly file: string;
  readonly title: string;
  readonly shows: string;
  readonly load: () => Promise<string>;
}

const SHOWS: Readonly<Record<string, string>> = {
  '01-plain-basement': 'Two rooms, a pit, a furnace, a pair of detectors on a desk.',
  '02-split-level':
    'Four levels for a sale: one detector clear, one tight at the exterior door, one on the wrong level.',
  '03-crowded-utility': 'A basement with almost no allowed area, with one distance made stricter and one looser.',
  '04-metric-house': 'A house measured in meters: thick walls, a room round a corner, after mitigation.',
  '05-boarding-house': 'A boarding house of 30 rooms, to see how a large plan feels.',
  '06-sale-report': 'A finished test for a sale: a pair that agrees, and its report.',
  '07-test-invalid': 'A test for a sale that is invalid: too short, a window open, a detector moved.',
  '08-sunny-rooms': 'Two rooms and five windows: where the sun falls from November 4 to 7, and what keeps out of it.',
};

const files = import.meta.glob<string>('../../samples/*.plan.json', { query: '?raw', import: 'default' });

/** All samples in the order of their numbers. */
export const SAMPLES: readonly Sample[] = Object.entries(files)
  .map(([path, load]) => {
    const file = path.replace(/^.*\//, '').replace(/\.plan\.json$/, '');
    return { file, title: titleOf(file), shows: SHOWS[file] ?? '', load };
  })
  .sort((a, b) => a.file.localeCompare(b.file));

/** "01-plain-basement" → "Plain basement". */
function titleOf(file: string): string {
  const words = file.replace(/^\d+-/, '').replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
