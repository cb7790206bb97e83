/** Frames and memory of the built app in Chromium: measures, prints, and writes `src/SPEED.md`. */
import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { surroundings } from '../surroundings.ts';
import { GESTURES, type Gesture } from './gestures.ts';
import { type FrameFigures, measureGesture, ticking } from './measure.ts';
import { walk } from './memory-walk.ts';
import { type FrameResults, framesPage, framesTable } from './page.ts';
import { openSheet, openStand, type Stand, samplePlan } from './stand.ts';

const PAGE = 'src/SPEED.md';
const FULL = { ms: 5000, acts: 1200 } as const;
const QUICK = { ms: 1500, acts: 150 } as const;

export interface FrameOptions {
  readonly quick: boolean;
  /** Folder of an earlier version, built, and its name; null for none. */
  readonly before: { readonly folder: string; readonly name: string } | null;
  /** Id of the only gesture to measure, whose row is printed; null for all. */
  readonly only: string | null;
}

export async function runFrames({ quick, before, only }: FrameOptions): Promise<void> {
  const where = surroundings();
  const { ms, acts } = quick ? QUICK : FULL;
  const stand = await openStand(before?.folder ?? null);
  try {
    const floor = await emptyPage(stand, ms);
    const now = await allGestures(stand, stand.now, ms, only);
    const earlier = stand.before ? await allGestures(stand, stand.before, ms, only) : new Map<string, FrameFigures>();
    if (only) {
      console.log(`${framesTable({ floor, now, before: earlier })}\n\nload ${loadavg()[0]?.toFixed(2)}`);
      return;
    }
    const sheet = await openSheet(stand.browser, stand.now, samplePlan('large'));
    console.error('memory');
    const walked = await walk(sheet, acts);
    const results: FrameResults = {
      floor,
      now,
      before: earlier,
      beforeName: before?.name ?? '',
      walk: walked,
      browser: `Chromium ${stand.browser.version()}`,
      seconds: ms / 1000,
      loadAfter: loadavg()[0] ?? Number.NaN,
    };
    const page = framesPage(results, where);
    console.log(page);
    if (quick) return;
    writeFileSync(PAGE, page);
    console.error(`Wrote ${PAGE}`);
  } finally {
    await stand.stop();
  }
}

async function allGestures(
  stand: Stand,
  url: string,
  ms: number,
  only: string | null,
): Promise<ReadonlyMap<string, FrameFigures>> {
  const figures = new Map<string, FrameFigures>();
  const wanted = GESTURES.filter(({ id }) => only === null || id === only);
  for (const gesture of wanted) figures.set(gesture.id, await oneGesture(stand, url, gesture, ms));
  return figures;
}

async function oneGesture(stand: Stand, url: string, gesture: Gesture, ms: number): Promise<FrameFigures> {
  console.error(gesture.name);
  const plan = samplePlan(gesture.sample);
  const sheet = await openSheet(stand.browser, url, plan);
  const figures = await measureGesture(sheet, plan, gesture, ms);
  await sheet.close();
  return figures;
}

async function emptyPage({ browser }: Stand, ms: number): Promise<readonly number[]> {
  const page = await browser.newPage();
  await page.setContent('<!doctype html><title>Nothing</title>');
  const intervals = await ticking(page, () => new Promise((done) => setTimeout(done, ms)));
  await page.close();
  return intervals;
}
