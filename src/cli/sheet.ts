import type { Plan } from '../../geometry/plan/model.ts';
import { drawSheets } from '../report/draw-sheets.ts';
import { type CliCommand, UnusableError } from './call.ts';
import { computedById, today } from './paper/computed.ts';
import { overPlans, type PaperCommand, pageOption } from './paper/paper-command.ts';
import type { PaperJob } from './paper/paper-job.ts';
import { filesOfPages, PAGE_FORMATS } from './paper/write-pages.ts';
import { isPlacementFine, verifiedPlacement } from './verified-placement.ts';

export const sheetPaper: PaperCommand = {
  name: 'sheet',
  formats: PAGE_FORMATS,
  checkOptions: (plan, job) => void levelsOf(job, plan),
  make: async (plan, job) => {
    const placement = verifiedPlacement(plan);
    const order = { plan, ...pageOption(job, plan), date: today(plan), computed: computedById(placement) };
    const pages = levelsOf(job, plan).flatMap((levelId) => drawSheets({ ...order, levelId }));
    return { ...(await filesOfPages(job, pages, order)), fine: isPlacementFine(placement), notes: [], document: {} };
  },
};

/** `sheet FILE… --out NAME.pdf`: the marked-up plan of each level, or of one. */
export const sheet: CliCommand = {
  name: 'sheet',
  synopsis:
    'FILE… --out NAME.pdf|.svg|.png [--level ID] [--paper letter|a4|tabloid|a3] [--orientation portrait|landscape] [--force]',
  summary:
    'the marked-up plan, true to scale; of several files or a folder into the folder --out, as --format pdf|svg|png',
  takesManyFiles: true,
  takesFolders: true,
  options: ['out', 'level', 'paper', 'orientation', 'format'],
  flags: ['force'],
  run: (call) => overPlans(sheetPaper, call),
};

function levelsOf({ options: { level }, file }: PaperJob, plan: Plan): readonly string[] {
  const ids = plan.levels.map(({ id }) => id);
  if (level === undefined) return ids;
  if (!ids.includes(level))
    throw new UnusableError(`${file}: --level "${level}" is no level of it; there are ${ids.join(', ')}.`);
  return [level];
}
