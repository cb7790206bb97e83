import { drawDocument, type VisitDocument } from '../report/documents/draw-document.ts';
import { type CliCommand, UnusableError } from './call.ts';
import { choiceOption } from './output.ts';
import { computedById, today } from './paper/computed.ts';
import { overPlans, type PaperCommand, pageOption } from './paper/paper-command.ts';
import { filesOfPages, PAGE_FORMATS } from './paper/write-pages.ts';
import { isPlacementFine, verifiedPlacement } from './verified-placement.ts';

/** The documents for the people in the house, by the value of `--kind`. */
const KINDS = {
  closing: 'notice',
  progress: 'entrance-notice',
  agreement: 'agreement',
  card: 'placement-card',
} as const satisfies Readonly<Record<string, VisitDocument>>;
type Kind = keyof typeof KINDS;
const KIND_NAMES = Object.keys(KINDS) as readonly Kind[];

export const noticePaper: PaperCommand = {
  name: 'notice',
  formats: PAGE_FORMATS,
  make: async (plan, job) => {
    const placement = verifiedPlacement(plan);
    const computed = computedById(placement);
    const order = { plan, ...pageOption(job, plan), date: today(plan), now: Date.now(), computed };
    const kind = choiceOption(job, 'kind', KIND_NAMES, 'closing');
    const pages = drawDocument(KINDS[kind], order);
    const fine = kind !== 'card' || isPlacementFine(placement); // the others print no verdict
    return { ...(await filesOfPages(job, pages, order)), fine, notes: [], document: {} };
  },
};

/** `notice FILE… --kind KIND --out NAME.pdf`: one page for the people in the house. */
export const notice: CliCommand = {
  name: 'notice',
  synopsis:
    'FILE… --kind closing|progress|agreement|card --out NAME.pdf|.svg|.png [--paper …] [--orientation …] [--force]',
  summary:
    'a page for the people in the house: closing, test in progress, agreement, placement card; of several plans into the folder --out',
  takesManyFiles: true,
  takesFolders: true,
  options: ['kind', 'out', 'paper', 'orientation', 'format'],
  flags: ['force'],
  run: (call) => {
    if (call.options.kind === undefined)
      throw new UnusableError(`notice needs --kind: one of ${KIND_NAMES.join(', ')}.`);
    choiceOption(call, 'kind', KIND_NAMES, 'closing');
    return overPlans(noticePaper, call);
  },
};
