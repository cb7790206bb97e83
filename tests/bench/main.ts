/** The benchmarks: measures, prints, and after a full run writes `geometry/SPEED.md` and its picture. */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { conduct, FULL, QUICK } from './conduct.ts';
import { runFrames } from './frames/run.ts';
import { growthPlot } from './growth.ts';
import { runLimits } from './limits/run.ts';
import { speedPage } from './page.ts';
import { runStart } from './start/run.ts';
import { runSun } from './sun-page.ts';
import { surroundings } from './surroundings.ts';

const PAGE = 'geometry/SPEED.md';
const PLOT = 'speed-growth.svg';

const OPTIONS = {
  quick: { type: 'boolean', default: false },
  frames: { type: 'boolean', default: false },
  page: { type: 'boolean', default: false },
  sun: { type: 'boolean', default: false },
  limits: { type: 'boolean', default: false },
  gesture: { type: 'string' },
  before: { type: 'string' },
  'before-name': { type: 'string' },
} as const;

/**
 * Runs the benchmarks. `--quick`: a minute, printed only. `--frames`: the app in a browser, not the engine; `--before FOLDER` also measures
 * an earlier version that was built there, `--gesture ID` only one gesture. `--page`: how fast the app starts. `--sun`: only the rows about
 * the sun. `--limits`: the largest plan and large pictures in the app, printed only. `child` is the module that does one job in a separate
 * process.
 */
export async function run(args: readonly string[], child: string): Promise<void> {
  const { values } = parseArgs({ args: [...args], options: OPTIONS });
  const { quick, frames, page: startOfPage, before: folder } = values;
  if (frames) {
    const before = folder ? { folder, name: values['before-name'] ?? folder } : null;
    await runFrames({ quick, before, only: values.gesture ?? null });
    return;
  }
  if (startOfPage) {
    await runStart({ quick });
    return;
  }
  if (values.limits) {
    await runLimits();
    return;
  }
  if (values.sun) {
    runSun(child, PAGE);
    return;
  }
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
