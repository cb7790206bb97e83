import { markedCite } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { csv } from '../protocol/csv.ts';
import { detectorLabel } from '../protocol/detector-label.ts';
import { locationJson } from '../protocol/results/describe-location.ts';
import { isConclusive } from '../protocol/results/location-report.ts';
import { issueText } from '../protocol/validity/validity.ts';
import {
  houseStep,
  type ReportContent,
  reportContent,
  resultRows,
  STATEMENTS,
} from '../report/documents/report-content.ts';
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

function reportJson(content: ReportContent) {
  const { plan, state, sets, house, items } = content;
  return {
    title: plan.title,
    site: plan.site.label,
    test: state.validity,
    reasons: state.issues.map(issueText),
    notes: state.notes,
    sets: sets.map(locationJson),
    house: house.step,
    houseStep: house.text,
    visit: plan.visit,
    missing: items
      .filter(({ state: of }) => of === 'missing')
      .map(({ item, lacking }) => ({
        id: item.id,
        item: item.name,
        lacking,
        lists: item.sources.map(markedCite),
      })),
    items: items.map(({ item, state: of }) => ({ id: item.id, state: of })),
    statements: STATEMENTS,
  };
}

/** A row for each detector, with what it shares with its location in every row. */
function reportTable(content: ReportContent): readonly (readonly (string | number)[])[] {
  const { plan, state, sets } = content;
  const head = [
    'title',
    'site',
    'test',
    'location',
    'detector',
    'value',
    'unit',
    'below limit',
    'mean pCi/L',
    'agreement',
    'location holds',
    'next step',
    'next step for the building',
    'start',
    'end',
  ];
  const rows = resultRows(content).flatMap(({ location, step, holds }, index) => {
    const set = sets[index];
    if (!set) return [];
    const { meanRounded, agreement } = locationJson(set);
    return set.set.readings.map(({ detector, value, unit, belowLimit }) => {
      const placed = set.set.detectors.find(({ id }) => id === detector);
      return [
        plan.title,
        plan.site.label,
        state.validity,
        location,
        placed ? detectorLabel(placed) : detector,
        value,
        unit,
        belowLimit ? 'yes' : 'no',
        holds && meanRounded !== null ? meanRounded : '',
        holds ? agreement : '',
        holds ? 'yes' : 'no',
        step,
        houseStep(content),
        plan.visit.start ?? '',
        plan.visit.end ?? '',
      ];
    });
  });
  return [head, ...rows];
}
