import type { PdfDocument, StructureElement } from './pdf-library.ts';
import type { SvgElement } from './read-svg.ts';

/** Structure types of ISO 32000-1, 14.8.4, by the role of a group (WAI-ARIA 1.2). */
const TYPE_BY_ROLE: Readonly<Record<string, string>> = {
  paragraph: 'P',
  table: 'Table',
  row: 'TR',
  columnheader: 'TH',
  cell: 'TD',
  figure: 'Figure',
};
/** Types that hold text directly; in the others a text becomes a paragraph. */
const HOLDS_TEXT = new Set(['P', 'TH', 'TD', 'Figure', 'H1', 'H2', 'H3']);

interface Open {
  readonly element: StructureElement;
  readonly type: string;
}

/** Writes the structure of a page while it is painted: text in reading order, figures with alternative text, the rest as decoration. */
export class StructureWriter {
  readonly #doc: PdfDocument;
  readonly #stack: Open[];
  /** The element that the open marked content belongs to; null if none is open. */
  #marked: StructureElement | 'decoration' | null = null;

  constructor(doc: PdfDocument, root: StructureElement) {
    this.#doc = doc;
    this.#stack = [{ element: root, type: 'Document' }];
  }

  /** Paints an element of the page within its place in the structure. */
  around({ name, attributes }: SvgElement, paint: () => void): void {
    const type = name === 'g' && typeOf(attributes);
    if (type) this.#within(type, attributes['aria-label'], paint);
    else {
      if (name === 'text') this.#markText();
      else if (name !== 'g') this.#mark(this.#top.type === 'Figure' ? this.#top : 'decoration');
      paint();
    }
  }

  /** Ends the open marked content of this page. */
  end(): void {
    if (this.#marked) this.#doc.endMarkedContent();
    this.#marked = null;
  }

  get #top(): Open {
    return this.#stack.at(-1) as Open;
  }

  #within(type: string, alt: string | undefined, paint: () => void): void {
    const element = this.#doc.struct(type, alt ? { alt } : {});
    this.#top.element.add(element);
    this.#stack.push({ element, type });
    // Marked content of the parent must not continue in the child.
    this.end();
    paint();
    this.end();
    this.#stack.pop();
    element.end();
  }

  #markText(): void {
    const top = this.#top;
    if (HOLDS_TEXT.has(top.type)) this.#mark(top);
    else {
      const element = this.#doc.struct('P');
      top.element.add(element);
      this.#mark({ element, type: 'P' });
    }
  }

  #mark(to: Open | 'decoration'): void {
    const wanted = to === 'decoration' ? to : to.element;
    if (this.#marked === wanted) return;
    this.end();
    if (to === 'decoration') this.#doc.markContent('Artifact', { type: 'Layout' });
    else to.element.add(this.#doc.markStructureContent(to.type));
    this.#marked = wanted;
  }
}

function typeOf({ role = '', 'aria-level': level = '1' }: SvgElement['attributes']): string | undefined {
  return role === 'heading' ? `H${level}` : TYPE_BY_ROLE[role];
}
