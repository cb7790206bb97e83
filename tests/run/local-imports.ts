import type { Plugin } from 'vite';

const IMPORT = /^import \{([^}]*)\} from ("\.{1,2}\/[^"]+\.tsx?");?$/gm;

/**
 * Reads the imports of our own modules once, into constants. The tests' module loader makes every imported name a property with a getter,
 * read at each use; the app's bundle does not. Later changes of an export would be missed, but there are none (`export let`).
 */
export function localImports(): Plugin {
  return {
    name: 'local-imports',
    enforce: 'post', // types are gone by then
    transform: (code, id) =>
      /\.tsx?$/.test(id) && !id.includes('node_modules') ? { code: withConstants(code), map: null } : null,
  };
}

/** Returns the code with the same line numbers, so that stack traces are right. */
export function withConstants(code: string): string {
  return code.replace(IMPORT, (_, list: string, from: string) => {
    const names = list.split(',').flatMap((each) => {
      const [name = '', local = name] = each.trim().split(/\s+as\s+/);
      return name ? [{ name, local }] : [];
    });
    const imported = names.map(({ name, local }) => `${name} as imported_${local}`).join(', ');
    const constants = names.map(({ local }) => `${local} = imported_${local}`).join(', ');
    return `import { ${imported} } from ${from}; const ${constants};`;
  });
}
