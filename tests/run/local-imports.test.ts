import { expect, it } from 'vitest';
import { withConstants } from './local-imports.ts';

it('what own modules import is read once, on the same line; the rest stays', () => {
  const code = [
    'import React from "react";',
    'import { expect } from "vitest";',
    'import { a, b as c } from "../x.ts";',
    'import * as all from "./y.ts";',
    'export { d } from "./z.ts";',
    'c(a);',
  ];
  const constants = 'import { a as imported_a, b as imported_c } from "../x.ts"; const a = imported_a, c = imported_c;';
  expect(withConstants(code.join('\n')).split('\n')).toEqual(code.with(2, constants));
});
