import { parseAst } from 'vite';
import { describe, expect, it } from 'vitest';
import { withoutAbout } from '../../../../src/platform/offline/schema-texts-plugin.ts';

const without = (code: string) => withoutAbout(code, parseAst(code));

describe('withoutAbout', () => {
  it.each([
    ["const a = about(b(), 'B.');", 'const a = b();'],
    ["record({ a: about(b, 'one'), c: about(d(1, 2), 'two') });", 'record({ a: b, c: d(1, 2) });'],
    ["about(list(about(x, 'inner')), 'outer')", 'list(x)'],
    ["about(\n  v.exactOptional(y),\n  'False: only what a new one begins with.',\n)", 'v.exactOptional(y)'],
  ])('of %s is %s', (code, wanted) => {
    expect(without(code)).toBe(wanted);
  });

  it.each([
    'export function about(schema, text) { return v.pipe(schema, v.description(text)); }',
    "other(x, 'text'); about(x);",
  ])('leaves %s as it is', (code) => {
    expect(without(code)).toBe(code);
  });
});
