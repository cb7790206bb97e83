/** Replaces the test library in the bundle: `campaign.ts` collects the declared tests, and runs them. */

type Body = (...args: never[]) => unknown;
export interface Declared {
  readonly name: string;
  readonly run: () => unknown;
}

/** The declarations of the file that is being loaded. */
interface Collector {
  readonly tests: Declared[];
  readonly path: string[];
  readonly after: (() => unknown)[];
  readonly library: Record<string, unknown>;
}

const collector = () => (globalThis as unknown as { collector: Collector }).collector;

function declare(name: string, ...given: readonly unknown[]): void {
  const body = bodyOf(given);
  const { tests, path, after } = collector();
  const run = async () => {
    try {
      await body();
    } finally {
      for (const clean of after) await clean();
    }
  };
  tests.push({ name: [...path, name].join(' › '), run });
}

/** The body among the arguments: options, such as a time limit, may be before or after it. */
const bodyOf = (given: readonly unknown[]): Body => given.find((one) => typeof one === 'function') as Body;

function group(name: string, ...given: readonly unknown[]): void {
  const { path } = collector();
  const body = bodyOf(given);
  path.push(name);
  body();
  path.pop();
}

/** Declares a test with `one` for each row of a table. */
const each =
  (one: (name: string, body: () => unknown) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, ...given: readonly unknown[]): void => {
    const body = bodyOf(given);
    rows.forEach((row, index) => {
      const args = (Array.isArray(row) ? row : [row]) as never[];
      one(`${name} #${index + 1}`, () => body(...args));
    });
  };

export const it = Object.assign(declare, { each: each(declare) });
export const describe = Object.assign(group, { each: each(group) });
export const afterEach = (clean: () => unknown): void => void collector().after.push(clean);
export const expect = new Proxy(() => undefined, {
  apply: (_, self, args) => Reflect.apply(collector().library.expect as () => unknown, self, args),
  get: (_, key) => Reflect.get(collector().library.expect as object, key),
});
