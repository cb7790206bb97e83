import type { Plan } from '../../../geometry/plan/model.ts';
import type { Computed } from '../../../geometry/recheck/compare.ts';
import type { VerifiedLevel } from '../../protocol/validity/verified-placement.ts';
import { PAPERS, type PaperName } from '../../report/paper.ts';
import { type Call, type CommandResult, exitCode } from '../call.ts';
import { choiceOption, formatOf, makeFolder, outOption, pathsIn, writeFiles } from '../output.ts';
import { showProgress } from './progress.ts';
import { filesOfPages, PAGE_FORMATS, type PageFormat } from './write-pages.ts';

/** The pages of one plan, and whether a verdict of it is blocked or unknown. */
export interface DrawnPlan {
  readonly pages: readonly string[];
  readonly paper: PaperName;
  readonly trouble: boolean;
}

interface Written {
  readonly plan: string;
  readonly files: readonly string[];
  readonly lacking: readonly string[];
  readonly trouble: boolean;
}

/**
 * Draws each plan and writes its pages: one plan to the file that `--out` names, several into the folder that it names, as `--format` says.
 * @throws UnusableError where something cannot be drawn or written
 */
export async function writePapers(
  call: Call,
  command: string,
  draw: (plan: Plan) => DrawnPlan,
): Promise<CommandResult> {
  const { paths, format } = targets(call, command);
  const written: Written[] = [];
  for (const [index, plan] of call.plans.entries()) {
    if (call.several) showProgress(index, call.plans.length);
    written.push(await writeOne(plan, call, draw(plan), paths[index] ?? '', format, call.names[index] ?? ''));
  }
  if (call.several) showProgress(call.plans.length, call.plans.length);
  const trouble = written.some((each) => each.trouble);
  return {
    text: call.json ? `${JSON.stringify({ written }, null, 2)}\n` : asText(written),
    code: exitCode(call, !trouble),
  };
}

function targets(call: Call, command: string): { paths: readonly string[]; format: PageFormat } {
  const out = outOption(call, command, call.several ? 'papers' : `${command}.pdf`);
  if (!call.several) return { paths: [out], format: formatOf(out, PAGE_FORMATS) };
  const format = choiceOption(call, 'format', PAGE_FORMATS, 'pdf');
  makeFolder(out);
  return { paths: pathsIn(out, call.names, format), format };
}

async function writeOne(
  plan: Plan,
  call: Call,
  { pages, paper, trouble }: DrawnPlan,
  path: string,
  format: PageFormat,
  name: string,
): Promise<Written> {
  const title = plan.title || 'Plan without a title';
  const { files, lacking } = await filesOfPages(path, format, {
    pages,
    title,
    date: today(),
    width: PAPERS[paper].width,
  });
  writeFiles(files, call.flags.has('force'));
  return { plan: name, files: files.map((file) => file.path), lacking, trouble };
}

function asText(written: readonly Written[]): string {
  const lines = written.flatMap(({ files, lacking }) => [
    ...files.map((file) => `Wrote ${file}`),
    ...(lacking.length > 0 ? [`  Not in the font of the pages, drawn as empty boxes: ${lacking.join(' ')}`] : []),
  ]);
  return `${lines.join('\n')}\n`;
}

/** Returns what the second computation says of each detector, by id. */
export function computedById(placement: readonly VerifiedLevel[]): ReadonlyMap<string, Computed> {
  return new Map(placement.flatMap(({ detectors }) => detectors.map(({ id, computed }) => [id, computed] as const)));
}

/** Returns the usual paper for the plan's units of length. */
export function usualPaper({ display }: Plan): PaperName {
  return display.length === 'metric' ? 'a4' : 'letter';
}

/** Returns the day as ISO 8601 writes it, in the time of this computer. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
