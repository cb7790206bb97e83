/** Times of repeated runs, ms: wall time, and processor time of all threads of the process, with garbage collection. */
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
  /** Duration of the runs that are discarded first, ms (at least one run), so that the code is compiled and hot. */
  readonly warmUpMs: number;
  /** Number of measured runs, fewer if they take longer than `measureMs`; at least one. */
  readonly times: number;
  readonly measureMs: number;
  /** Whether a row that takes seconds does only a part of its work. */
  readonly brief?: boolean;
}

export const noSamples = (): Samples => ({ wall: [], cpu: [] });

/** Runs once and adds the times to `samples`, divided by `share`. Returns the result. */
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
 * Times repeated runs. `next` prepares the next run and `after` gets its result; neither is timed. `share` is the number of equal parts of
 * a run: samples are per part.
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

/** Returns order statistics, NaN for no values. A percentile is the least value that this percentage of the values does not exceed. */
export function summarize(values: readonly number[]): Summary {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return { count: sorted.length, min: at(0), median: at(0.5), p95: at(0.95), p99: at(0.99), max: at(1) };
}
