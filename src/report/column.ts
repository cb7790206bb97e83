/** The notes beside the drawing: verdicts, changed rules, what did not run, the legend, the basis. */
import { headlineText, toneOf } from '../../geometry/messages/index.ts';
import { usedHatches } from '../drawing/floor.ts';
import { headlineDetail } from '../protocol/validity/headline.ts';
import { headlineSentence } from '../protocol/validity/headline-sentence.ts';
import { HATCHES, type HatchName } from '../theme/hatches.ts';
import { type Block, besides, boxed, fitsParagraph, indented, paragraph, space, stack } from './block.ts';
import {
  changedRules,
  computedLines,
  hasWhite,
  MEASURED_LINE,
  notRunLines,
  placeLine,
  profileLine,
  reasonOf,
  ruleWithDistance,
  sourcesLine,
  timeLine,
  toleranceLine,
  whiteHeight,
  whiteMeans,
} from './notes.ts';
import { COLOR, LINE_MM, TAKEN_GROUND, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { rectElement } from './svg.ts';
import { hatchFill, verdictMark } from './svg-shapes.ts';
import { drawText, shortened, textWidth } from './text.ts';

type Fullness = 'full' | 'short' | 'least';
/**
 * How much each verdict says. "full": word, reason and place. "places": no reason where the verdict is clear. "short": reasons of those
 * that are not clear, no places. "least": the word only.
 */
type VerdictFullness = Fullness | 'places';
/** How much is said beside the drawing; what is left out is on the sheets that follow. */
export interface NoteForm {
  readonly verdicts: VerdictFullness;
  readonly basis: Fullness;
}
/** From the fullest to the shortest; reasons of verdicts are left out last. */
export const NOTE_FORMS: readonly NoteForm[] = [
  { verdicts: 'full', basis: 'full' },
  { verdicts: 'full', basis: 'short' },
  { verdicts: 'full', basis: 'least' },
  { verdicts: 'places', basis: 'short' },
  { verdicts: 'places', basis: 'least' },
  { verdicts: 'short', basis: 'short' },
  { verdicts: 'short', basis: 'least' },
  { verdicts: 'least', basis: 'short' },
  { verdicts: 'least', basis: 'least' },
];

const BODY = { size: TYPE_MM.body } as const;
const SMALL = { size: TYPE_MM.small } as const;
const SOFT = { size: TYPE_MM.small, color: COLOR.inkSoft } as const;
const BOLD = { size: TYPE_MM.body, weight: 'bold' } as const;
const HEAD = { size: TYPE_MM.head, weight: 'bold' } as const;
/** Lines after which a note is shortened beside the drawing; the tables have it whole. */
const NOTE_LINES = 4;
const CHUNK = 8;
/** Longest word of a verdict that leaves room for a second verdict in the row, letters. */
const LONG_WORD = 10;
/** Says where the sources are if they have no room beside the drawing. */
const SOURCES_ELSEWHERE: Readonly<Record<SubjectMatter['paper'], string>> = {
  sheets: 'Sources: in the tables on the sheets that follow.',
  report: 'Sources: in the table of the rules, in this report.',
};
const SWATCH = { width: 11, height: 4.6 } as const;

/** Returns the blocks in order of importance; each is kept whole. */
export function columnBlocks(matter: SubjectMatter, width: number, form: NoteForm): readonly Block[] {
  const { verdicts, basis } = form;
  return [
    testBlock(matter, width, form),
    ...verdictBlocks(matter, width, verdicts),
    matter.detectors.length > 0 ? paragraph(timeLine(matter), width, SMALL) : space(0),
    changedBlock(matter, width),
    notRunBlock(matter, width),
    legendBlock(matter, width, basis),
    basisBlock(matter, width, basis),
  ].filter(({ height }) => height > 0);
}

/** The state of the whole test, never better than that of its worst part; every cause is in the tables. */
function testBlock({ plan, state }: SubjectMatter, width: number, { verdicts, basis }: NoteForm): Block {
  const inner = width - 4;
  const lead = paragraph(headlineSentence(plan, state), inner, BOLD);
  const brief = paragraph(headlineDetail(plan, state), inner, verdicts === 'full' ? BODY : SMALL);
  const isLeast = verdicts === 'least' && basis === 'least';
  return boxed(isLeast ? lead : stack([lead, brief], 0.4), width);
}

function verdictBlocks(matter: SubjectMatter, width: number, fullness: VerdictFullness): readonly Block[] {
  const { detectors, levelBar } = matter;
  const bar = levelBar
    ? boxed(
        stack([paragraph('Not the level to test', width - 4, BOLD), paragraph(levelBar, width - 4, BODY)], 0.4),
        width,
      )
    : space(0);
  if (detectors.length === 0) {
    return [
      stack(
        [paragraph('Verdict', width, HEAD), bar, paragraph('No detector is placed on this level.', width, BODY)],
        1,
      ),
    ];
  }
  const rows = detectors.map((placed) => verdictBlock(matter, placed, width, fullness));
  const head = [paragraph(detectors.length === 1 ? 'Verdict' : 'Verdicts', width, HEAD), bar];
  const cells = cellWidth(matter, width) < width ? inColumns(rows, width) : rows;
  if (fullness === 'least') return chunks([...head, ...cells]).map((chunk) => stack(chunk, 0.8));
  const [first, ...rest] = rows;
  return [stack([...head, first ?? space(0)], 1.2), ...rest];
}

/** Mark and word; then the reason and the place, as far as `fullness` says. */
function verdictBlock(
  matter: SubjectMatter,
  placed: SubjectMatter['detectors'][number],
  width: number,
  fullness: VerdictFullness,
): Block {
  const { detector, report } = placed;
  const tone = toneOf(report);
  const color = COLOR.verdict[tone].line;
  const style = { size: TYPE_MM.lead, weight: 'bold', color } as const;
  const word = headlineText(report);
  const free = (fullness === 'least' ? cellWidth(matter, width) : width) - 8 - textWidth(word, style);
  const title = `${shortened(detector.label.trim() || detector.id, free, style)}  ${word}`;
  const head: Block = {
    height: 4.4,
    draw: (x, y) => verdictMark(tone, x + 2, y + 2.2, 1.9) + drawText(x + 5.6, y + 3.2, title, style),
  };
  const isMet = report.verdict === 'clear';
  if (fullness === 'least' || (fullness === 'short' && isMet)) return head;
  const lines = [
    fullness === 'places' && isMet ? space(0) : paragraph(reasonOf(matter, placed), width - 5.6, BODY),
    fullness === 'short' ? space(0) : paragraph(placeLine(matter, detector), width - 5.6, SMALL),
  ];
  return stack([head, ...lines.map((block) => indented(block, 5.6))], 0.2);
}

/** Two short verdicts share a row, unless the word of one needs the whole row. */
function cellWidth({ detectors }: SubjectMatter, width: number): number {
  const long = detectors.some(({ report }) => headlineText(report).length > LONG_WORD);
  return long ? width : width / 2;
}

/** Short rows in groups, so that a long list can continue in the next column. */
function chunks(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const count = Math.ceil(blocks.length / CHUNK);
  return Array.from({ length: count }, (_, i) => blocks.slice(i * CHUNK, (i + 1) * CHUNK));
}

/** Two short blocks in a row. */
function inColumns(blocks: readonly Block[], width: number): readonly Block[] {
  const rows: Block[] = [];
  for (let i = 0; i < blocks.length; i += 2) {
    rows.push(besides(blocks.slice(i, i + 2).map((block, j) => ({ left: (j * width) / 2, block }))));
  }
  return rows;
}

/** In a heavy box with "LOOSENED" in capitals, so that a loosened rule is not overlooked. */
function changedBlock(matter: SubjectMatter, width: number): Block {
  const changed = changedRules(matter);
  if (changed.length === 0) return space(0);
  const inner = width - 4;
  const rows = changed.map(({ loosened, word, says, note }) =>
    stack([
      paragraph(`${word}: ${says}`, inner, loosened ? BOLD : BODY),
      paragraph(note ? `Note: ${shortened(note, inner * NOTE_LINES, SMALL)}` : '', inner, SMALL),
    ]),
  );
  return boxed(stack([paragraph('Rules changed on this plan', inner, BOLD), ...rows], 0.8), width);
}

function notRunBlock(matter: SubjectMatter, width: number): Block {
  const lines = notRunLines(matter);
  if (lines.length === 0) return space(0);
  return stack([paragraph('Not run', width, BOLD), ...lines.map((words) => paragraph(words, width, SMALL))], 0.4);
}

/** Hatches are listed in two columns at `least`, else in one. */
function legendBlock(matter: SubjectMatter, width: number, fullness: Fullness): Block {
  const wide = fullness === 'least' ? width / 2 - 2.5 : width;
  const white = hasWhite(matter)
    ? swatchRow(
        width,
        'Allowed area (white): a detector may be placed here, by the rules that are hatched.',
        whiteSwatch,
      )
    : paragraph('No allowed area: no spot on this level meets the rules.', width, BODY);
  const rows = usedHatches(matter.region, matter.zones).map((name) =>
    swatchRow(wide, hatchWords(matter, name), (x, y) => hatchSwatch(name, x, y)),
  );
  const placed = wide < width ? inColumns(rows, width) : rows;
  return stack([paragraph('Allowed area and hatches', width, BOLD), white, ...placed], 0.7);
}

function hatchWords(matter: SubjectMatter, name: HatchName): string {
  switch (name) {
    case 'barred':
      return 'Room in which no detector may be placed';
    case 'unlabelled':
      return 'Room whose use is not known';
    case 'sunlit':
      return 'Floor that direct sun crosses on the days of the test; clouds are not counted on';
    case 'height':
      return 'No spot at this height above the floor';
    default: {
      const rule = matter.rules.find(({ id }) => id === name);
      return rule ? ruleWithDistance(rule, matter) : name;
    }
  }
}

function swatchRow(width: number, words: string, draw: (x: number, y: number) => string): Block {
  const left = SWATCH.width + 2.4;
  const text = paragraph(words, width - left, SMALL);
  const height = Math.max(SWATCH.height, text.height);
  return {
    height,
    draw: (x, y) => draw(x, y + (height - SWATCH.height) / 2) + text.draw(x + left, y + (height - text.height) / 2),
  };
}

function whiteSwatch(x: number, y: number): string {
  const weight = LINE_MM.region;
  return rectElement(x + weight / 2, y + weight / 2, SWATCH.width - weight, SWATCH.height - weight, {
    fill: COLOR.paper,
    stroke: COLOR.verdict.clear.line,
    'stroke-width': weight,
  });
}

function hatchSwatch(name: HatchName, x: number, y: number): string {
  const box = { x, y, ...SWATCH };
  const at = [box.x, box.y, box.width, box.height] as const;
  const edge = { stroke: COLOR.hatchEdge, 'stroke-width': LINE_MM.zone };
  return name in HATCHES
    ? rectElement(...at, { fill: TAKEN_GROUND }) + rectElement(...at, { fill: hatchFill(name), ...edge })
    : '';
}

function basisBlock(matter: SubjectMatter, width: number, fullness: Fullness): Block {
  const computed = computedLines(matter).join(' ');
  const elsewhere = SOURCES_ELSEWHERE[matter.paper];
  const sources = `Sources: ${sourcesLine(matter)}.`;
  const lines = {
    full: [
      computed,
      profileLine(matter),
      fitsParagraph(sources, width, SOFT) ? sources : elsewhere,
      toleranceLine(matter),
      whiteMeans(matter),
      MEASURED_LINE,
    ],
    short: [computed, `${profileLine(matter)} ${elsewhere}`, toleranceLine(matter), whiteMeans(matter)],
    least: [`${computed} ${profileLine(matter)} ${elsewhere} ${toleranceLine(matter)} ${whiteHeight(matter)}`.trim()],
  }[fullness];
  return stack(
    [
      paragraph('What this rests on', width, BOLD),
      ...lines.filter(Boolean).map((words) => paragraph(words, width, SOFT)),
    ],
    0.5,
  );
}
