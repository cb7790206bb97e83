import { againstBudget, duration, markdownTable } from '../figures.ts';
import { QUIET_LOAD } from '../frames/page.ts';
import { SAMPLE_WORDS, SCREEN } from '../frames/stand.ts';
import type { Surroundings } from '../surroundings.ts';
import { type Summary, summarize } from '../timing.ts';
import type { VisitFigures } from './visit.ts';

/** All visits of one kind. */
export interface Visits {
  readonly name: string;
  /** Whether the limits apply to it. */
  readonly hasTarget: boolean;
  readonly figures: readonly VisitFigures[];
}

/** Longest time until the first press, ms, and most bytes transferred before it. */
const BUDGET = { usable: 2000, codeBytes: 300_000 } as const;

export function startPage(visits: readonly Visits[], where: Surroundings, loadAfter: number): string {
  const busy = Math.max(where.load, loadAfter) > QUIET_LOAD;
  return `# How fast the app starts

Written by \`npm run bench -- --page\`, not by hand. One run.

- ${where.date}, ${where.processor}, ${where.cores} cores, headless Chromium, ${SCREEN.width} by ${SCREEN.height}, served by the same machine
- load at the start ${where.load.toFixed(2)}, at the end ${loadAfter.toFixed(2)}.${
    busy ? ' **The machine was busy with other work: the times are longer than they are on a quiet one.**' : ''
  }

## How to read it

- Every visit is a browser that was started anew. On a first visit its profile is new too: no cache, no plan, no worker.
- “Usable” is when the sheet is drawn, shown and takes a press; after each first visit a real press begins a wall to prove it. It must be at most
  ${duration(BUDGET.usable)} in the median.
- “Page, scripts, styles” is what came over the line until then, compressed, heads of the answers included. At most ${kilobytes(BUDGET.codeBytes)}.
- The slow line takes 1.6 Mbit/s and 150 ms there and back.
- The large level: ${SAMPLE_WORDS.large}. The app and the plan come out of the browser's own store, and the rules are run before it is drawn.

${table(visits)}
`;
}

function table(visits: readonly Visits[]): string {
  return markdownTable(
    ['visit', 'first paint', 'usable', 'least', '95 of 100', 'page, scripts, styles', 'fonts', 'visits', 'limits'],
    visits.map(({ name, hasTarget, figures }) => {
      const of = (pick: (figure: VisitFigures) => number): Summary => summarize(figures.map(pick));
      const usable = of((each) => each.usable);
      const bytes = of((each) => each.codeBytes).median;
      const met = `${againstBudget(usable.median, BUDGET.usable)}, ${againstBudget(bytes, BUDGET.codeBytes)}`;
      return [
        hasTarget ? `**${name}**` : name,
        duration(of((each) => each.firstPaint).median),
        duration(usable.median),
        duration(usable.min),
        duration(usable.p95),
        kilobytes(bytes),
        kilobytes(of((each) => each.fontBytes).median),
        String(figures.length),
        hasTarget ? met : '–',
      ];
    }),
  );
}

const kilobytes = (bytes: number) => `${Math.round(bytes / 1000)} kB`;
