/** The invented houses that come with the app, and what each is there to show. */
export interface Sample {
  readonly file: string;
  readonly title: string;
  readonly shows: string;
  readonly load: () => Promise<string>;
}

const SHOWS: Readonly<Record<string, string>> = {
  '01-plain-basement': 'A plain basement: two rooms, a pit, a furnace, one good corner.',
  '02-split-level': 'A split level: a slab room, a basement and a crawlspace, tested at the same time.',
  '03-crowded-utility': 'A crowded utility basement: almost nothing is left white.',
  '04-metric-house': 'A house measured in metres.',
};

const files = import.meta.glob<string>('../../samples/*.plan.json', { query: '?raw', import: 'default' });

/** In the order of their numbers. */
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
