/** The parts of pdfkit that its published types leave out: structure, marked content and tiling patterns. */
import type { Font } from 'fontkit';
import PDFDocument from 'pdfkit';

export interface StructureElement {
  add: (child: StructureElement | StructureContent) => StructureElement;
  end: () => void;
}
/** Marked content of a structure element, from its start to the next end. */
interface StructureContent {
  readonly marked?: never;
}
export interface TilingPattern {
  /** Adds the pattern to the page, in the current coordinates. */
  embed: () => void;
}
/** A font of a document: lays out words, and caches them if no features are given. */
export interface PdfFont {
  readonly font: Font;
  layoutRun: (text: string, features?: Readonly<Record<string, boolean>>) => unknown;
}
interface Untyped {
  /** Makes the font the current one. */
  font: (name: string) => PdfDocument;
  readonly _font: PdfFont;
  struct: (type: string, options?: { readonly alt?: string; readonly title?: string }) => StructureElement;
  addStructure: (element: StructureElement) => unknown;
  markStructureContent: (type: string) => StructureContent;
  markContent: (tag: string, options?: { readonly type?: string }) => unknown;
  endMarkedContent: () => unknown;
  pattern: (box: readonly number[], stepX: number, stepY: number, stream: string) => TilingPattern;
  addContent: (operators: string) => unknown;
}
export type PdfDocument = Omit<InstanceType<typeof PDFDocument>, keyof Untyped> & Untyped;

export function createPdf(options: Readonly<Record<string, unknown>>): PdfDocument {
  return new PDFDocument(options as PDFKit.PDFDocumentOptions) as unknown as PdfDocument;
}
