import type { CDPSession } from 'playwright-core';

/** An event of a trace of the browser; times in microseconds. */
export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  /** Processor time. */
  readonly tdur?: number;
}

/** Returns the trace of the browser during `run`. */
export async function traced(cdp: CDPSession, run: () => Promise<void>): Promise<readonly TraceEvent[]> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { readonly value: object[] }) => {
    // The protocol does not define the format of the events; it is that of Chromium's trace files.
    events.push(...(value as TraceEvent[]));
  };
  cdp.on('Tracing.dataCollected', collect);
  await cdp.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline'], excludedCategories: ['*'] },
  });
  await run();
  const complete = new Promise((done) => cdp.once('Tracing.tracingComplete', done));
  await cdp.send('Tracing.end');
  await complete;
  cdp.off('Tracing.dataCollected', collect);
  return events;
}

/** Callbacks closer together than this, µs, are of one frame. */
const ONE_FRAME = 4000;

/** Returns the processor time of the page's main thread from each frame to the next, ms. Throws if the trace has no frame. */
export function workPerFrame(events: readonly TraceEvent[]): readonly number[] {
  const first = events.find(({ name }) => name === 'FireAnimationFrame');
  if (!first) throw new Error('the browser noted no frame');
  const own = events.filter(({ pid, tid }) => pid === first.pid && tid === first.tid).sort((a, b) => a.ts - b.ts);
  const starts: number[] = [];
  for (const { name, ts } of own) {
    if (name === 'FireAnimationFrame' && ts - (starts.at(-1) ?? -ONE_FRAME) >= ONE_FRAME) starts.push(ts);
  }
  const tasks = own.filter(({ name, ph }) => name === TASK && ph === 'X');
  const work = new Array<number>(Math.max(0, starts.length - 1)).fill(0);
  let frame = 0;
  for (const { ts, dur = 0, tdur = 0 } of tasks) {
    const middle = ts + dur / 2;
    while (frame < work.length && middle >= (starts[frame + 1] ?? 0)) frame++;
    if (frame < work.length && middle >= (starts[frame] ?? 0)) work[frame] = (work[frame] ?? 0) + tdur / 1000;
  }
  return work;
}

/** Name of the event of one task of a thread. */
const TASK = 'ThreadControllerImpl::RunTask';
