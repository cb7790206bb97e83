import { XMLParser } from 'fast-xml-parser';

/** An element of a drawn page. Text is in `text`; our pages never mix text with elements. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgElement[];
  readonly text: string;
}

/** A node as the parser returns it, in document order: its name is the only key besides `:@`. */
type ParsedNode = Readonly<Record<string, unknown>>;
const ATTRIBUTES = ':@';
const TEXT = '#text';

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
});

/** Returns the root of a page that this project drew. Throws if it is not a single SVG element: that is our own mistake. */
export function readSvg(svg: string): SvgElement {
  const [root, ...more] = elementsOf(parser.parse(svg) as readonly ParsedNode[]);
  if (root?.name !== 'svg' || more.length > 0) throw new Error('A page must be one SVG element.');
  return root;
}

function elementsOf(nodes: readonly ParsedNode[]): readonly SvgElement[] {
  return nodes.flatMap((node) => {
    const name = Object.keys(node).find((key) => key !== ATTRIBUTES);
    if (!name || name === TEXT) return [];
    const inner = node[name] as readonly ParsedNode[];
    return [
      {
        name,
        attributes: (node[ATTRIBUTES] ?? {}) as SvgElement['attributes'],
        children: elementsOf(inner),
        text: inner.map((child) => String(child[TEXT] ?? '')).join(''),
      },
    ];
  });
}
