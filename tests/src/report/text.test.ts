import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { escapeXml } from '../../../src/report/svg.ts';
import { balancedText, shortened, textWidth, wrapText } from '../../../src/report/text.ts';
import { WIDTHS_FILE, widthsFileText } from '../../helpers/font-widths.ts';
import { fontPaths } from '../../helpers/raster.ts';

const SIZE = 100;

/** Where the ink of a text begins and ends, as an independent renderer shapes it, px. */
function inkExtent(text: string, weight: 400 | 700): { readonly left: number; readonly right: number } {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="4000" height="200" style="font-kerning:none;font-variant-ligatures:none"><text x="0" y="100" font-family="Atkinson Hyperlegible Next" font-size="${SIZE}" font-weight="${weight}">${escapeXml(text)}</text></svg>`;
  const box = new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: [...fontPaths()] } }).getBBox();
  if (!box) throw new Error('the renderer drew nothing');
  return { left: box.x, right: box.x + box.width };
}

describe('textWidth(text, style)', () => {
  it.each([
    'AVAToWa 1/2 in 5 ft',
    'Exterior doors and windows 36 in',
    'fi fl ffi ft tt',
    '0123456789',
    'Åse Brontë, 19.97 m²',
  ])('is the advance that a renderer gives to "%s"', (text) => {
    for (const [name, weight] of [['regular', 400] as const, ['bold', 700] as const]) {
      // Between two bars of known bearing the ink is the advance of all, less both bearings.
      const bar = inkExtent('I', weight);
      const bearing = bar.left;
      const whole = inkExtent(`I${text}I`, weight);
      const wanted = whole.right - whole.left + 2 * bearing;
      expect(textWidth(`I${text}I`, { size: SIZE, weight: name })).toBeCloseTo(wanted, 0);
    }
  });

  it('comes from the font files that are shipped', () => {
    expect(readFileSync(WIDTHS_FILE, 'utf8')).toBe(widthsFileText());
  });
});

describe('wrapText(text, width, style)', () => {
  const style = { size: 3 };
  const text = 'Drawn distances are as good as the tape that took them, needs 1.22 m and 7 ft 5 3/8 in.';

  it('keeps every line within the width and every word in its order', () => {
    for (const width of [16, 20, 33, 80]) {
      const lines = wrapText(text, width, style);
      for (const line of lines) expect(textWidth(line, style)).toBeLessThanOrEqual(width);
      expect(lines.join(' ').replaceAll('\u00a0', ' ')).toBe(text);
    }
  });

  it('keeps a figure with its unit', () => {
    const [, second] = wrapText('needs 1.22 m', textWidth('needs 1.22', style), style);
    expect(second).toBe('1.22\u00a0m');
  });

  it('breaks a word that is wider than the line', () => {
    const word = 'Donaudampfschifffahrt';
    const lines = wrapText(word, 10, style);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join('')).toBe(word);
  });

  it('gives no line for empty text', () => {
    expect(wrapText('  \n ', 10, style)).toEqual([]);
  });
});

describe('balancedText(text, width, style)', () => {
  const style = { size: 6 };

  it('has as many lines as the text needs, and no short last one', () => {
    const text = 'Keep windows and exterior doors closed.';
    const width = textWidth('Keep windows and exterior doors', style);
    expect(wrapText(text, width, style)).toEqual(['Keep windows and exterior doors', 'closed.']);
    expect(balancedText(text, width, style)).toEqual(['Keep windows and', 'exterior doors closed.']);
  });

  it('leaves one line as it is', () => {
    expect(balancedText('Radon test', 100, style)).toEqual(['Radon test']);
  });
});

describe('shortened(text, width, style)', () => {
  it('leaves what fits and ends the rest with three dots', () => {
    expect(shortened('Desk', 50, { size: 3 })).toBe('Desk');
    const short = shortened('A very long name for a desk', 20, { size: 3 });
    expect(short).toMatch(/^A very.*…$/);
    expect(textWidth(short, { size: 3 })).toBeLessThanOrEqual(20);
  });
});

describe('escapeXml(text)', () => {
  it('writes marks as entities and leaves out what XML bars', () => {
    expect(escapeXml('a<b>&"c"\u0000\u0007\ud800\ufffed\n\te')).toBe('a&lt;b&gt;&amp;&quot;c&quot;d e');
  });
});
