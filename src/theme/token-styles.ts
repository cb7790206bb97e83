/** Converts the tokens to CSS custom properties, one block per theme. Pure: the build hashes the text for the content security policy. */

import { FIGURE_FONT, TEXT_FONT } from './font-names.ts';
import { LINE_PX, MOTION_MS, RADIUS_PX, SHADE, SPACE_PX, TARGET_PX, THEMES, type Theme, TYPE_PX } from './tokens.ts';

/** Returns the custom properties of one theme: `--ink`, `--clear-ground`, … */
function themeProperties(theme: Theme): readonly (readonly [string, string])[] {
  const { name: _name, photo: _photo, verdict, weight, ...colors } = theme;
  const rows: [string, string][] = Object.entries(colors).map(([key, value]) => [`--${kebab(key)}`, value]);
  for (const [word, tone] of Object.entries(verdict)) {
    for (const [part, value] of Object.entries(tone)) rows.push([`--${word}-${part}`, String(value)]);
  }
  rows.push(['--hairline', `${weight}px`], ['--stroke', `${LINE_PX.fixture * weight}px`]);
  return rows;
}

/** Returns the style sheet: sizes once, colors per theme, keyed by `data-theme` on the root element. */
export function tokenStyles(): string {
  const fixed: (readonly [string, string])[] = [
    ...pxProperties('space', SPACE_PX),
    ...pxProperties('type', TYPE_PX),
    ...pxProperties('radius', RADIUS_PX),
    ['--target', `${TARGET_PX.fine}px`],
    ['--target-coarse', `${TARGET_PX.coarse}px`],
    ['--focus', `${LINE_PX.focus}px`],
    ['--backdrop', SHADE.backdrop],
    ['--motion', `${MOTION_MS}ms`],
    ['--text-font', `"${TEXT_FONT}", system-ui, sans-serif`],
    ['--figure-font', `"${FIGURE_FONT}", ui-monospace, monospace`],
  ];
  const blocks = Object.entries(THEMES).map(([name, theme]) =>
    block(`:root[data-theme="${name}"]`, themeProperties(theme)),
  );
  return [block(':root', fixed), ...blocks].join('\n');
}

function block(selector: string, rows: readonly (readonly [string, string])[]): string {
  return `${selector} {\n${rows.map(([key, value]) => `  ${key}: ${value};`).join('\n')}\n}`;
}

function pxProperties(prefix: string, sizes: Readonly<Record<string, number>>): readonly (readonly [string, string])[] {
  return Object.entries(sizes).map(([key, px]) => [`--${prefix}-${key}`, `${px}px`] as const);
}

function kebab(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
