/** What repeated runs took, ms: by the clock, and of processor time (all threads of the process, rubbish collection too). */
export interface Samples {
  readonly wall: number[];
  readonly cpu: number[];
}

export interface Summary {
  readonly count: number;
  readonly min: number;
  readonly median: number;
  readonly p95: number;
  readonly p99: number;
  readonly max: number;
}

export interface Effort {
  /** Runs that are thrown away first, ms of them (one at least): the code has to be compiled and hot. */
  readonly warmUpMs: number;
  /** Measured runs: as many as this, fewer when they take longer than `measureMs`; one at least. */
  readonly times: number;
  readonly measureMs: number;
  /** Whether a row that takes seconds does a part of its work only. */
  readonly brief?: boolean;
}

export const noSamples = (): Samples => ({ wall: [], cpu: [] });

/** Runs once and notes how long it took. */
export function timed<T>(run: () => T, samples: Samples, share = 1): T {
  const cpuBefore = process.cpuUsage();
  const before = performance.now();
  const result = run();
  const wall = performance.now() - before;
  const { user, system } = process.cpuUsage(cpuBefore);
  samples.wall.push(wall / share);
  samples.cpu.push((user + system) / 1000 / share);
  return result;
}

/**
 * Times a run over and over. `next` gets the next run ready, which is not timed; so is `after`, with what the run answered.
 * `share` counts how many equal parts one run has: samples are per part.
 */
export function measure<T>(
  effort: Effort,
  next: () => () => T,
  after: (result: T) => void = () => undefined,
  share = 1,
): Samples {
  const warmUpEnd = performance.now() + effort.warmUpMs;
  do after(next()());
  while (performance.now() < warmUpEnd);
  const samples = noSamples();
  const end = performance.now() + effort.measureMs;
  do after(timed(next(), samples, share));
  while (samples.wall.length < effort.times && performance.now() < end);
  return samples;
}

/** Order statistics; NaN of nothing. A percentile is the least value that so many percent do not exceed. */
export function summarize(values: readonly number[]): Summary {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return { count: sorted.length, min: at(0), median: at(0.5), p95: at(0.95), p99: at(0.99), max: at(1) };
}
