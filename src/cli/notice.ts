import { drawDocument, type VisitDocument } from '../report/documents/draw-document.ts';
import { type CliCommand, UnusableError } from './call.ts';
import { choiceOption } from './output.ts';
import { today, writePapers } from './paper/papers.ts';
import { paperOption } from './sheet.ts';

/** The documents for the people in the house, by the word of the command line. */
const KINDS = {
  closing: 'notice',
  progress: 'entrance-notice',
  agreement: 'agreement',
  card: 'placement-card',
} as const satisfies Readonly<Record<string, VisitDocument>>;
type Kind = keyof typeof KINDS;
const KIND_NAMES = Object.keys(KINDS) as readonly Kind[];

/** `notice FILE --kind KIND --out NAME.pdf`: one page for the people in the house. */
export const notice: CliCommand = {
  name: 'notice',
  synopsis: 'FILE --kind closing|progress|agreement|card --out NAME.pdf|.svg|.png [--paper …] [--force]',
  summary: 'a page for the people in the house: closing, test in progress, agreement, placement card',
  options: ['kind', 'out', 'paper'],
  flags: ['force'],
  run: (call) => {
    if (call.options.kind === undefined)
      throw new UnusableError(`notice needs --kind: one of ${KIND_NAMES.join(', ')}.`);
    const which = KINDS[choiceOption(call, 'kind', KIND_NAMES, 'closing')];
    return writePapers(call, 'notice', (plan) => {
      const paper = paperOption(call, plan);
      return { paper, pages: drawDocument(which, { plan, paper, date: today() }), trouble: false };
    });
  },
};
