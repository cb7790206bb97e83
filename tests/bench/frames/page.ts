import { duration, markdownTable, megabytes } from '../figures.ts';
import type { Surroundings } from '../surroundings.ts';
import { type Summary, summarize } from '../timing.ts';
import { GESTURES, type Gesture } from './gestures.ts';
import type { FrameFigures } from './measure.ts';
import { WARM_UP, type WalkFigures } from './memory-walk.ts';
import { SAMPLE_WORDS, SCREEN } from './stand.ts';

/** All figures of a run. */
export interface FrameResults {
  /** Intervals of an empty page that requests every frame and does nothing in it, ms. */
  readonly floor: readonly number[];
  /** By id of the gesture. */
  readonly now: ReadonlyMap<string, FrameFigures>;
  readonly before: ReadonlyMap<string, FrameFigures>;
  /** Name of the earlier version; empty if none was measured. */
  readonly beforeName: string;
  readonly walk: WalkFigures;
  readonly browser: string;
  readonly seconds: number;
  /** Load average of the last minute, at the end. */
  readonly loadAfter: number;
}

/** Longest time of a frame, ms; the second one for a processor slowed by six. */
const BUDGET = { median: 17, p95: 34 } as const;
const SLOWED_BUDGET = { median: 60, p95: 60 } as const;
/** Largest growth of the heap in the walk, a share. */
const MOST_GROWTH = 0.2;
/** Load average above which other work affects the times. */
export const QUIET_LOAD = 1.5;

export function framesPage(results: FrameResults, where: Surroundings): string {
  const { walk, browser, seconds, loadAfter, beforeName } = results;
  const busy = Math.max(where.load, loadAfter) > QUIET_LOAD;
  const growth = walk.after / walk.before - 1;
  return `# Frames and memory of the app

Written by \`npm run bench -- --frames\`, not by hand. One run.

- ${where.date}, ${where.processor}, ${where.cores} cores, ${browser}, software rendering, ${SCREEN.width} by ${SCREEN.height}
- load at the start ${where.load.toFixed(2)}, at the end ${loadAfter.toFixed(2)}.${
    busy ? ' **The machine was busy with other work: read “work”, and the floor beside the intervals.**' : ''
  }
- large: ${SAMPLE_WORDS.large}
- huge: ${SAMPLE_WORDS.huge}

## How to read it

- A mouse that reports its place 125 times a second drags for ${seconds} s along a path that bends and comes back.
- “Interval” is the time from one frame to the next on the page's own clock. A screen of 60 frames a second gives 16.7 ms at best. It must be
  at most ${BUDGET.median} ms in the median and ${BUDGET.p95} ms in 95 of 100; slowed six times by the browser, as a tablet may be, ${SLOWED_BUDGET.p95} ms in 95 of 100.
- “Work” is processor time of the page's main thread for a frame, noted by the browser in a second run of the same gesture; other work on the
  machine disturbs it less. The notes themselves cost some of it.
- The floor is an empty page in the same browser that asks for every frame and does nothing.${
    beforeName ? `\n- Before: ${beforeName}, the same gesture in the same run.` : ''
  }

## Frames

${framesTable(results)}

## Memory

${walk.acts.toLocaleString('en-US')} acts of every kind on the large level, undo and redo among them, a frame after each, in ${duration(walk.took * 1000)}: what a quick person does
in an hour. Live bytes of the heap after everything dead was collected; ${WARM_UP} acts before fill what is meant to fill.

${markdownTable(
  ['heap', 'bytes that live'],
  [
    ['after the warm-up', megabytes(walk.before)],
    ['an hour later', megabytes(walk.after)],
    [
      `grown by, at most ${MOST_GROWTH * 100} %`,
      `${(growth * 100).toFixed(1)} %: ${growth < MOST_GROWTH ? 'met' : 'missed'}`,
    ],
  ],
)}
`;
}

export function framesTable(results: Pick<FrameResults, 'floor' | 'now' | 'before'>): string {
  const floor = ['the floor', '–', ...cells(summarize(results.floor)), '–', '–', '–', '–', '–'];
  const lines = GESTURES.flatMap((gesture) => gestureLines(results, gesture));
  return markdownTable(
    ['gesture', 'level', 'interval', '95 of 100', 'most', 'work', '95 of 100', 'most', 'frames', 'budget'],
    [floor, ...lines],
  );
}

function gestureLines(
  { now, before }: Pick<FrameResults, 'now' | 'before'>,
  { id, name, sample, slowed }: Gesture,
): string[][] {
  const line = (figures: FrameFigures | undefined, title: string, hasTarget: boolean) => {
    if (!figures) return [];
    const interval = summarize(figures.intervals);
    const most = slowed > 1 ? SLOWED_BUDGET : BUDGET;
    const met = interval.median <= most.median && interval.p95 <= most.p95;
    const verdict = met ? 'met' : 'missed';
    return [
      [
        title,
        sample,
        ...cells(interval),
        ...cells(summarize(figures.work)),
        String(interval.count),
        hasTarget ? verdict : '–',
      ],
    ];
  };
  return [...line(now.get(id), `**${name}**`, true), ...line(before.get(id), 'the same before', false)];
}

function cells({ median, p95, max }: Summary): string[] {
  return [median, p95, max].map((ms) => ms.toFixed(1));
}
