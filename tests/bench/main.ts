/** The benchmarks: measures, prints, and after a full run writes `geometry/SPEED.md` and its picture. */
import { writeFileSync } from 'node:fs';
import { conduct, FULL, QUICK } from './conduct.ts';
import { growthPlot } from './growth.ts';
import { speedPage } from './page.ts';
import { surroundings } from './surroundings.ts';

const PAGE = 'geometry/SPEED.md';
const PLOT = 'speed-growth.svg';

/** `--quick`: a minute, printed only. `child` is the module that does one job in a process of its own. */
export function run(args: readonly string[], child: string): void {
  const unknown = args.filter((arg) => arg !== '--quick');
  if (unknown.length > 0) throw new Error(`npm run bench takes --quick, not ${unknown.join(' ')}.`);
  const quick = args.includes('--quick');
  const where = surroundings();
  const scope = quick ? QUICK : FULL;
  const results = conduct(scope, child, (line) => console.error(line));
  const page = speedPage(results, scope, where, PLOT);
  console.log(page);
  if (quick) return;
  writeFileSync(PAGE, page);
  writeFileSync(`geometry/${PLOT}`, growthPlot(results.growth));
  console.error(`Wrote ${PAGE} and geometry/${PLOT}`);
}
