import type { Plugin } from 'vite';

const IMPORT = /^import \{([^}]*)\} from ("\.{1,2}\/[^"]+\.tsx?");?$/gm;

/**
 * Reads what own modules import once, into constants. The tests' module loader makes of every imported name a property with a getter, read
 * at each use; the app's bundle does not. A name that is changed after its module has run would be missed: there is none (`export let`).
 */
export function localImports(): Plugin {
  return {
    name: 'local-imports',
    enforce: 'post', // types are gone by then
    transform: (code, id) =>
      /\.tsx?$/.test(id) && !id.includes('node_modules') ? { code: withConstants(code), map: null } : null,
  };
}

/** The same lines as before, so that a trace tells the right one. */
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
