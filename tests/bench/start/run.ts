/** How fast the built app starts in Chromium: measures, prints, and writes `src/START.md`. */
import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { serveBuilt } from '../frames/stand.ts';
import { surroundings } from '../surroundings.ts';
import { startPage, type Visits } from './page.ts';
import { firstVisit, SLOW_LINE, type VisitFigures, visitAgain } from './visit.ts';

const PAGE = 'src/START.md';
const FULL = 15;
const QUICK = 3;

export async function runStart({ quick }: { readonly quick: boolean }): Promise<void> {
  const where = surroundings();
  const times = quick ? QUICK : FULL;
  const { url, stop } = await serveBuilt();
  const visits: Visits[] = [];
  try {
    // In turn, so that a slow minute of the machine affects all of them.
    const kinds = [
      { name: 'first visit', hasTarget: true, go: () => firstVisit(url) },
      { name: 'first visit over a slow line', hasTarget: false, go: () => firstVisit(url, SLOW_LINE) },
      { name: 'back at the large level', hasTarget: false, go: () => visitAgain(url) },
    ];
    const all = kinds.map(() => [] as VisitFigures[]);
    for (let round = 1; round <= times; round++) {
      console.error(`round ${round} of ${times}`);
      for (const [index, { go }] of kinds.entries()) all[index]?.push(await go());
    }
    visits.push(...kinds.map(({ name, hasTarget }, index) => ({ name, hasTarget, figures: all[index] ?? [] })));
  } finally {
    await stop();
  }
  const page = startPage(visits, where, loadavg()[0] ?? Number.NaN);
  console.log(page);
  if (quick) return;
  writeFileSync(PAGE, page);
  console.error(`Wrote ${PAGE}`);
}
