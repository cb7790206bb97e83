/** Paints the elements of a drawn page with calls of the PDF library. Throws for an element it does not know: none is left out silently. */
import { textWidth } from '../text.ts';
import type { PageFonts, Weight } from './fonts.ts';
import type { PdfHatch } from './hatches.ts';
import type { PdfDocument } from './pdf-library.ts';
import type { SvgElement } from './read-svg.ts';

export interface Brush {
  readonly doc: PdfDocument;
  readonly fonts: PageFonts;
  readonly hatches: ReadonlyMap<string, PdfHatch>;
  /** Clip paths by id, each of one path or rectangle. */
  readonly clips: ReadonlyMap<string, SvgElement>;
}

type Attributes = SvgElement['attributes'];

const numberIn = (attributes: Attributes, key: string): number => Number(attributes[key] ?? 0);

/** Paints one element; `inside` paints the children of a group. */
export function paintElement(
  brush: Brush,
  element: SvgElement,
  inside: (children: readonly SvgElement[]) => void,
): void {
  const { doc } = brush;
  const { name, attributes, children } = element;
  const { transform, 'clip-path': clip } = attributes;
  const framed = transform !== undefined || clip !== undefined || attributes.opacity !== undefined;
  if (framed) doc.save();
  if (transform) applyTransform(doc, transform);
  if (clip) clipTo(brush, idOf(clip));
  if (attributes.opacity !== undefined) doc.opacity(Number(attributes.opacity));
  if (name === 'g') inside(children);
  else if (name === 'text') paintText(brush, element);
  else if (name === 'image') paintImage(doc, attributes);
  else if (name === 'path' || name === 'rect' || name === 'circle') paintShape(brush, element);
  else throw new Error(`The PDF cannot draw <${name}>.`);
  if (framed) doc.restore();
}

function paintShape({ doc, hatches }: Brush, element: SvgElement): void {
  const { attributes } = element;
  const { fill, stroke = 'none' } = attributes;
  if (fill === undefined) throw new Error(`A <${element.name}> of a page must tell its fill.`);
  const [fills, strokes] = [fill !== 'none', stroke !== 'none'];
  if (!fills && !strokes) return;
  const hatch = fill.startsWith('url(') ? hatches.get(idOf(fill)) : undefined;
  if (fill.startsWith('url(') && !hatch) throw new Error(`The page does not define ${fill}.`);
  outline(doc, element);
  if (strokes) strokeStyle(doc, attributes);
  if (fills) doc.fillColor((hatch ? [hatch.pattern, hatch.color] : fill) as string);
  const rule = attributes['fill-rule'] === 'evenodd' ? 'even-odd' : 'non-zero';
  if (fills && strokes) doc.fillAndStroke(undefined, undefined, rule);
  else if (fills) doc.fill(rule);
  else doc.stroke();
}

function outline(doc: PdfDocument, { name, attributes }: SvgElement): void {
  const of = (key: string) => numberIn(attributes, key);
  if (name === 'path') doc.path(attributes.d ?? '');
  else if (name === 'circle') doc.circle(of('cx'), of('cy'), of('r'));
  else doc.rect(of('x'), of('y'), of('width'), of('height'));
}

function strokeStyle(doc: PdfDocument, attributes: Attributes): void {
  const { stroke = '', 'stroke-linejoin': join = 'miter', 'stroke-linecap': cap = 'butt' } = attributes;
  const dashes = attributes['stroke-dasharray']?.split(/[ ,]+/).map(Number) ?? [];
  doc.strokeColor(stroke).lineWidth(Number(attributes['stroke-width'] ?? 1));
  doc.lineJoin(join as 'round').lineCap(cap as 'butt');
  // The default miter limit of SVG; that of PDF is 10.
  doc.miterLimit(4);
  if (dashes.length > 0) doc.addContent(`[${dashes.join(' ')}] 0 d`);
  else doc.undash();
}

function paintText({ doc, fonts }: Brush, { attributes, text }: SvgElement): void {
  const size = numberIn(attributes, 'font-size');
  const weight: Weight = attributes['font-weight'] === '700' ? 'bold' : 'regular';
  const { 'text-anchor': anchor = 'start', fill = '', stroke } = attributes;
  const share = { start: 0, middle: 0.5, end: 1 }[anchor] ?? 0;
  const left = numberIn(attributes, 'x') - share * textWidth(text, { size, weight });
  const runs = fonts.runsOf(text, weight);
  const draw = (options: { readonly fill: boolean; readonly stroke: boolean }) => {
    let x = left;
    for (const run of runs) {
      doc.font(run.font).fontSize(size);
      doc.text(run.text, x, numberIn(attributes, 'y'), {
        ...options,
        lineBreak: false,
        baseline: 'alphabetic',
      });
      x += textWidth(run.text, { size, weight });
    }
  };
  if (stroke) {
    // The halo is not text of its own, so that copied text has the words once.
    doc.addContent('/Span <</ActualText ()>> BDC');
    strokeStyle(doc, attributes);
    draw({ fill: false, stroke: true });
    doc.addContent('EMC');
  }
  doc.fillColor(fill);
  draw({ fill: true, stroke: false });
}

function paintImage(doc: PdfDocument, attributes: Attributes): void {
  const { href = '', preserveAspectRatio } = attributes;
  const of = (key: string) => numberIn(attributes, key);
  const box: [number, number] = [of('width'), of('height')];
  const size =
    preserveAspectRatio === 'none'
      ? { width: box[0], height: box[1] }
      : { fit: box, align: 'center' as const, valign: 'center' as const };
  doc.image(href, of('x'), of('y'), size);
}

function clipTo({ doc, clips }: Brush, id: string): void {
  const shape = clips.get(id);
  if (!shape) throw new Error(`The page does not define the clip ${id}.`);
  outline(doc, shape);
  doc.clip(shape.attributes['clip-rule'] === 'evenodd' ? 'even-odd' : 'non-zero');
}

function applyTransform(doc: PdfDocument, transform: string): void {
  for (const [, kind, values = ''] of transform.matchAll(/(\w+)\(([^)]*)\)/g)) {
    const [a = 0, b = 0, c = 0] = values.split(/[ ,]+/).map(Number);
    if (kind === 'translate') doc.translate(a, b);
    else if (kind === 'rotate') doc.rotate(a, { origin: [b, c] });
    else if (kind === 'scale') doc.scale(a, b || a);
    else throw new Error(`The PDF cannot ${kind}.`);
  }
}

function idOf(reference: string): string {
  return /^url\(#(.+)\)$/.exec(reference)?.[1] ?? '';
}
