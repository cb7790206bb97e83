import { oneLine } from '../../geometry/messages/plain-text.ts';

/** SVG as text. Coordinates are mm of paper, x right and y down. */

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Returns a number with at most three decimals: a thousandth of a mm is finer than any printer prints. */
export function num(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  let list = '';
  for (const key of Object.keys(attributes)) {
    const value = attributes[key];
    if (value !== undefined) list += ` ${key}="${typeof value === 'number' ? num(value) : escapeXml(String(value))}"`;
  }
  return children.length === 0 ? `<${name}${list}/>` : `<${name}${list}>${children.join('')}</${name}>`;
}

export function group(attributes: Attributes, ...children: readonly string[]): string {
  return element('g', attributes, ...children);
}

export function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes): string {
  return element('path', { d: `M${num(x1)} ${num(y1)}L${num(x2)} ${num(y2)}`, fill: 'none', ...attributes });
}

export function rectElement(x: number, y: number, width: number, height: number, attributes: Attributes): string {
  return element('rect', { x, y, width, height, ...attributes });
}

/** Returns text for XML: markup characters escaped; characters that XML 1.0 (section 2.2) does not allow left out. */
export function escapeXml(text: string): string {
  if (/^[ !#-%'-;=?-~]*$/.test(text)) return text; // nothing to escape or leave out
  return oneLine(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
