import { readFileSync, writeFileSync } from 'node:fs';
import { conductRows, FULL } from './conduct.ts';
import { digits } from './figures.ts';
import { surroundings } from './surroundings.ts';
import { ownTable } from './tables.ts';

const HEADING = '## Direct sun';

/** Measures only the rows about the sun, and writes them as a section into the page of a full run. */
export function runSun(child: string, page: string): void {
  const { date, processor, cores, load } = surroundings();
  const busy = load > cores / 2 ? ' **The machine was busy with other work: read “least” and “processor”.**' : '';
  const table = ownTable({ rows: conductRows(FULL, child, ['sun', 'sun-minutes']) });
  const section = `${HEADING}\n\nMeasured apart from the rest: ${date}, ${processor}, ${cores} cores, load at the start ${digits(load)}.${busy}\n\n${table}\n`;
  console.log(section);
  writeFileSync(page, withSection(readFileSync(page, 'utf8'), section));
}

/** Returns a page with a section that replaces the earlier one, or at its end. */
export function withSection(page: string, section: string): string {
  const from = page.indexOf(`\n${HEADING}\n`);
  const next = from < 0 ? -1 : page.indexOf('\n## ', from + 1);
  const before = (from < 0 ? page : page.slice(0, from)).trimEnd();
  const after = next < 0 ? '' : page.slice(next);
  return `${before}\n\n${section.trimEnd()}\n${after}`;
}
