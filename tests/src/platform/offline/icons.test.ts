import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { THEMES } from '../../../../src/theme/tokens.ts';
import { drawnIcons, ICONS } from '../../../run/icons.mjs';

it('the icons are drawn from the drawing as it is now, in the colors of the page', () => {
  for (const [name, bytes] of drawnIcons()) {
    expect(readFileSync(new URL(name, ICONS)).equals(bytes), `${name}: run node tests/run/icons.mjs`).toBe(true);
  }
  const colors = new Set(readFileSync(new URL('icon.svg', ICONS), 'utf8').match(/#[0-9a-f]{6}/g));
  expect([...colors].sort()).toEqual([THEMES.paper.ink, THEMES.paper.paper].sort());
});
