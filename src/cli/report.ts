import { csv } from '../protocol/csv.ts';
import { isConclusive } from '../protocol/results/location-report.ts';
import { reportContent } from '../report/documents/report-content.ts';
import { reportJson, reportTable } from '../report/documents/report-data.ts';
import { drawTestReport } from '../report/documents/test-report.ts';
import type { CliCommand } from './call.ts';
import { computedById, today } from './paper/computed.ts';
import { overPlans, type PaperCommand, pageOption } from './paper/paper-command.ts';
import type { MadePaper } from './paper/paper-job.ts';
import { filesOfPages, PAGE_FORMATS } from './paper/write-pages.ts';
import { verifiedPlacement } from './verified-placement.ts';

export const reportPaper: PaperCommand = {
  name: 'report',
  formats: [...PAGE_FORMATS, 'csv', 'json'],
  make: async (plan, job): Promise<MadePaper> => {
    const computed = computedById(verifiedPlacement(plan));
    const content = reportContent(plan, computed);
    const { state, house, sets } = content;
    const document = reportJson(content);
    const { missing } = document;
    const rest = {
      fine: state.validity === 'holds' && house.step !== 'unknown' && sets.every(isConclusive),
      notes: missing.length > 0 ? [`Missing: ${missing.map(({ id }) => id).join(', ')}`] : [],
      document,
    };
    const text = { json: `${JSON.stringify(document, null, 2)}\n`, csv: csv(reportTable(content)) }[job.format];
    if (text !== undefined) return { files: [{ path: job.path, bytes: text }], lacking: [], ...rest };
    const order = { plan, ...pageOption(job, plan), date: today(plan), computed };
    return { ...(await filesOfPages(job, drawTestReport(order), order)), ...rest };
  },
};

/** `report FILE… --out NAME.pdf`: the report of the test. */
export const report: CliCommand = {
  name: 'report',
  synopsis:
    'FILE… --out NAME.pdf|.svg|.png|.csv|.json [--paper letter|a4|tabloid|a3] [--orientation portrait|landscape] [--force]',
  summary:
    'the report of the test; of several files or a folder into the folder --out, as --format pdf|svg|png|csv|json',
  takesManyFiles: true,
  takesFolders: true,
  options: ['out', 'paper', 'orientation', 'format'],
  flags: ['force'],
  run: (call) => overPlans(reportPaper, call),
};
