/** What is used of pdfkit beyond its published types: structure, marked content and tiling patterns. */
import type { Font } from 'fontkit';
import PDFDocument from 'pdfkit';

export interface StructureElement {
  add: (child: StructureElement | StructureContent) => StructureElement;
  end: () => void;
}
/** Marked content of a structure element, between its begin and the next end. */
interface StructureContent {
  readonly marked?: never;
}
export interface TilingPattern {
  /** Makes the pattern part of the page, in the coordinates of this moment. */
  embed: () => void;
}
/** A font of a document: sets words, and keeps them where no features are asked for. */
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
