import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { Script } from 'node:vm';
import { build, type Rollup } from 'vite';

const ROOT = process.cwd();
/** Does the same as `tests/helpers/with-sun.ts`: a module without exports would be left out of the bundle. */
const WITH_SUN = `
  import { setSunSource as setSource } from '${ROOT}/geometry/sun/sun-floor.ts';
  import { sweptArea as swept } from '${ROOT}/geometry/sun/swept.ts';
  setSource(swept);`;
const SHIM = join(ROOT, 'tests/mutate/shim.ts');
const nodeRequire = createRequire(join(ROOT, 'package.json'));

/** The test files in one bundle with shared chunks, which can be run repeatedly. */
export class Bundle {
  private readonly scripts: ReadonlyMap<string, Script>;
  private readonly entryOf: ReadonlyMap<string, string>;

  constructor(chunks: readonly Rollup.OutputChunk[]) {
    this.scripts = new Map(
      chunks.map(({ fileName, code }) => [
        fileName,
        new Script(`(function (require, module, exports) {${code}\n})`, { filename: fileName }),
      ]),
    );
    this.entryOf = new Map(
      chunks.flatMap(({ facadeModuleId, fileName, isEntry }) =>
        isEntry && facadeModuleId ? [[relative(ROOT, facadeModuleId), fileName]] : [],
      ),
    );
  }

  /** Returns a function that runs a test file after the chunks that it imports, each once. */
  loader(): (testFile: string) => void {
    const loaded = new Map<string, { exports: unknown }>();
    const load = (fileName: string): unknown => {
      const before = loaded.get(fileName);
      if (before) return before.exports;
      const module = { exports: {} as unknown };
      loaded.set(fileName, module);
      const run = (this.scripts.get(fileName) as Script).runInThisContext();
      run((name: string) => (name.startsWith('./') ? load(name.slice(2)) : nodeRequire(name)), module, module.exports);
      return module.exports;
    };
    return (testFile) => void load(this.entryOf.get(testFile) as string);
  }
}

/** Bundles test files; `sources`: the code of modules that are replaced, by path from the root. */
export async function bundleTests(testFiles: readonly string[], sources: ReadonlyMap<string, string>): Promise<Bundle> {
  const entries = new Set(testFiles.map((file) => join(ROOT, file)));
  const { output } = (await build({
    root: ROOT,
    configFile: false,
    logLevel: 'silent',
    resolve: { alias: { vitest: SHIM } },
    ssr: { noExternal: ['flatbush', 'flatqueue', 'suncalc'] },
    plugins: [
      {
        name: 'mutants',
        enforce: 'pre',
        transform: (code, id) => {
          if (entries.has(id)) return { code: `${WITH_SUN};${code}`, map: null };
          const replaced = sources.get(relative(ROOT, id));
          return replaced === undefined ? null : { code: replaced, map: null };
        },
      },
    ],
    build: {
      ssr: true,
      target: 'node20',
      minify: false,
      write: false,
      rolldownOptions: {
        input: [...entries],
        output: { format: 'cjs', entryFileNames: '[name]-[hash].cjs', chunkFileNames: '[name]-[hash].cjs' },
      },
    },
  })) as Rollup.RollupOutput;
  return new Bundle(output.filter((part) => part.type === 'chunk'));
}
