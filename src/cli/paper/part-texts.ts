import { runsBySubset } from '../../report/font-faces.ts';
import { element, escapeXml } from '../../report/svg.ts';
import { textWidth } from '../../report/text.ts';

/**
 * Returns a page whose texts with extended letters are split where the font file changes, each part at its place and in the family of its
 * file. Otherwise the library that makes pictures takes a letter that one file lacks from any other: for bold type from the regular file, or
 * from none, as an empty box, if the two files give the word different numbers of glyphs.
 * @param family family name of the extended letters
 */
export function withPartedTexts(svg: string, family: string): string {
  return svg.replace(/<text ([^>]*)>([^<]*)<\/text>/g, (whole, attributes: string, content: string) => {
    const runs = runsBySubset(unescaped(content));
    if (runs.every(({ subset }) => subset === 'latin')) return whole;
    const of = (name: string) => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    const weight = of('font-weight') === '700' ? 'bold' : 'regular';
    const style = { size: Number(of('font-size')), weight } as const;
    const share = { middle: 0.5, end: 1 }[of('text-anchor') ?? ''] ?? 0;
    let x = Number(of('x')) - share * textWidth(runs.map(({ text }) => text).join(''), style);
    const parts = runs.map(({ text, subset }) => {
      const part = element('tspan', { x, 'font-family': subset === 'latin' ? undefined : family }, escapeXml(text));
      x += textWidth(text, style);
      return part;
    });
    const others = attributes.replace(/ ?(?:text-anchor|xml:space)="[^"]*"/g, '');
    return `<text ${others} xml:space="preserve">${parts.join('')}</text>`;
  });
}

function unescaped(text: string): string {
  return text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}
