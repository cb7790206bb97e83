import type { Plan } from '../../geometry/plan/model.ts';
import { csv } from '../protocol/csv.ts';
import { isConclusive } from '../protocol/results/location-report.ts';
import { type ReportContent, reportContent } from '../report/documents/report-content.ts';
import { reportJson, reportTable } from '../report/documents/report-data.ts';
import { drawTestReport } from '../report/documents/test-report.ts';
import { PAPERS } from '../report/paper.ts';
import { type Call, type CliCommand, type CommandResult, exitCode } from './call.ts';
import { choiceOption, formatOf, makeFolder, outOption, pathsIn, writeFiles } from './output.ts';
import { computedById, today } from './paper/papers.ts';
import { showProgress } from './paper/progress.ts';
import { filesOfPages, type OutputFile } from './paper/write-pages.ts';
import { paperOption } from './sheet.ts';
import { verifiedPlacement } from './verified-placement.ts';

const FORMATS = ['pdf', 'svg', 'png', 'csv', 'json'] as const;
type Format = (typeof FORMATS)[number];

/** `report FILE… --out NAME.pdf`: the report of the test. */
export const report: CliCommand = {
  name: 'report',
  synopsis: 'FILE… --out NAME.pdf|.svg|.png|.csv|.json [--paper letter|a4|tabloid|a3] [--force]',
  summary: 'the report of the test; of several files or a folder into the folder --out',
  takesManyFiles: true,
  takesFolders: true,
  options: ['out', 'paper', 'format'],
  flags: ['force'],
  run: async (call) => {
    const out = outOption(call, 'report', call.several ? 'reports' : 'report.pdf');
    const format = call.several ? choiceOption(call, 'format', FORMATS, 'pdf') : formatOf(out, FORMATS);
    if (call.several) makeFolder(out);
    const paths = call.several ? pathsIn(out, call.names, format) : [out];
    const done: Done[] = [];
    for (const [index, plan] of call.plans.entries()) {
      if (call.several) showProgress(index, call.plans.length);
      done.push(await reportOn(call, plan, paths[index] ?? '', format));
    }
    if (call.several) showProgress(call.plans.length, call.plans.length);
    return resultOf(call, done);
  },
};

interface Done {
  readonly document: ReturnType<typeof reportJson>;
  readonly files: readonly string[];
  readonly lacking: readonly string[];
  readonly holds: boolean;
}

async function reportOn(call: Call, plan: Plan, path: string, format: Format): Promise<Done> {
  const computed = computedById(verifiedPlacement(plan));
  const content = reportContent(plan, computed);
  const document = reportJson(content);
  const { files, lacking } = await filesFor(call, content, computed, path, format);
  writeFiles(files, call.flags.has('force'));
  const { state, house, sets } = content;
  return {
    document,
    files: files.map((file) => file.path),
    lacking,
    holds: state.validity === 'holds' && house.step !== 'unknown' && sets.every(isConclusive),
  };
}

async function filesFor(
  call: Call,
  content: ReportContent,
  computed: ReturnType<typeof computedById>,
  path: string,
  format: Format,
): Promise<{ readonly files: readonly OutputFile[]; readonly lacking: readonly string[] }> {
  if (format === 'json')
    return { files: [{ path, bytes: `${JSON.stringify(reportJson(content), null, 2)}\n` }], lacking: [] };
  if (format === 'csv') return { files: [{ path, bytes: csv(reportTable(content)) }], lacking: [] };
  const { plan } = content;
  const [paper, date] = [paperOption(call, plan), today()];
  return filesOfPages(path, format, {
    pages: drawTestReport({ plan, paper, date, computed }),
    title: `Report: ${plan.title || 'plan without a title'}`,
    date,
    width: PAPERS[paper].width,
  });
}

function resultOf(call: Call, done: readonly Done[]): CommandResult {
  const { json, several } = call;
  const code = exitCode(
    call,
    done.every(({ holds }) => holds),
  );
  if (json) {
    const documents = done.map(({ document, files }) => ({ files, ...document }));
    return { text: `${JSON.stringify(several ? { reports: documents } : documents[0], null, 2)}\n`, code };
  }
  const lines = done.flatMap(({ files, lacking, document: { missing } }) => [
    ...files.map((file) => `Wrote ${file}`),
    ...(missing.length > 0 ? [`  Missing: ${missing.map(({ id }) => id).join(', ')}`] : []),
    ...(lacking.length > 0 ? [`  Not in the font of the pages, drawn as empty boxes: ${lacking.join(' ')}`] : []),
  ]);
  return { text: `${lines.join('\n')}\n`, code };
}
