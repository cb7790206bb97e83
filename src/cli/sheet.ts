import type { Plan } from '../../geometry/plan/model.ts';
import { drawSheets } from '../report/draw-sheets.ts';
import { PAPER_NAMES, type PaperName } from '../report/paper.ts';
import { type Call, type CliCommand, UnusableError } from './call.ts';
import { choiceOption } from './output.ts';
import { computedById, today, usualPaper, writePapers } from './paper/papers.ts';
import { verifiedPlacement } from './verified-placement.ts';

/** `sheet FILE… --out NAME.pdf`: the marked-up plan of each level, or of one. */
export const sheet: CliCommand = {
  name: 'sheet',
  synopsis: 'FILE… --out NAME.pdf|.svg|.png [--level ID] [--paper letter|a4|tabloid|a3] [--force]',
  summary: 'the marked-up plan, true to scale; of several files or a folder into the folder --out',
  takesManyFiles: true,
  takesFolders: true,
  options: ['out', 'level', 'paper', 'format'],
  flags: ['force'],
  run: (call) =>
    writePapers(call, 'sheet', (plan) => {
      const placement = verifiedPlacement(plan);
      const paper = paperOption(call, plan);
      const computed = computedById(placement);
      const order = { plan, paper, date: today(), computed };
      return {
        paper,
        pages: levelsOf(call, plan).flatMap((levelId) => drawSheets({ ...order, levelId })),
        trouble: placement.some(({ detectors }) =>
          detectors.some(({ verdict }) => verdict === 'blocked' || verdict === 'unknown'),
        ),
      };
    }),
};

export function paperOption(call: Call, plan: Plan): PaperName {
  return choiceOption(call, 'paper', PAPER_NAMES, usualPaper(plan));
}

function levelsOf({ options: { level }, file }: Call, plan: Plan): readonly string[] {
  const ids = plan.levels.map(({ id }) => id);
  if (level === undefined) return ids;
  if (!ids.includes(level))
    throw new UnusableError(`${file}: --level "${level}" is no level of it; there are ${ids.join(', ')}.`);
  return [level];
}
