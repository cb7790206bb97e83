/** Reads a PDF with an independent library (pdf.js): texts, vertices, structure. Lengths in mm of paper, y down. */
import { getDocumentProxy, getResolvedPDFJS } from 'unpdf';

const MM = 25.4 / 72;

/** Node 20 lacks this method, and pdf.js calls it (ECMAScript 2024, 25.1.6.9). */
if (!('transferToFixedLength' in ArrayBuffer.prototype)) {
  Object.assign(ArrayBuffer.prototype, {
    transferToFixedLength(this: ArrayBuffer, length = this.byteLength) {
      const copy = new Uint8Array(length);
      copy.set(new Uint8Array(this, 0, Math.min(length, this.byteLength)));
      return copy.buffer;
    },
  });
}

interface ReadText {
  readonly text: string;
  /** Left end of the baseline. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
}
interface ReadPath {
  /** Fill color at the time of drawing, "#rrggbb". */
  readonly fill: string;
  readonly points: readonly (readonly [number, number])[];
}
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
  readonly paths: readonly ReadPath[];
  /** The structure as nested names: "Document(H1 P Table(TR(TH TH)))". */
  readonly structure: string;
}
export interface ReadPdf {
  readonly title: string;
  readonly language: string;
  readonly bookmarks: readonly string[];
  readonly pages: readonly ReadPage[];
}

type Matrix = readonly [number, number, number, number, number, number];

/** @param shapes whether the paths are read too, which takes most of the time */
export async function readPdf(bytes: Uint8Array, { shapes = true } = {}): Promise<ReadPdf> {
  const doc = await getDocumentProxy(bytes.slice());
  const { info } = (await doc.getMetadata()) as unknown as { info: Readonly<Record<string, string>> };
  const outline = (await doc.getOutline()) ?? [];
  const pages: ReadPage[] = [];
  for (let number = 1; number <= doc.numPages; number++) pages.push(await readPage(await doc.getPage(number), shapes));
  return {
    title: info.Title ?? '',
    language: info.Language ?? '',
    bookmarks: outline.map(({ title }) => title),
    pages,
  };
}

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocumentProxy>>['getPage']>>;

async function readPage(page: Page, shapes: boolean): Promise<ReadPage> {
  const [, , width = 0, height = 0] = page.view;
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item) => {
    if (!('str' in item) || item.str === '') return [];
    const [a = 0, b = 0, , , x = 0, y = 0] = item.transform as number[];
    return [{ text: item.str, x: x * MM, y: (height - y) * MM, size: Math.hypot(a, b) * MM }];
  });
  return {
    width: width * MM,
    height: height * MM,
    texts,
    paths: shapes ? await pathsOf(page, height) : [],
    structure: structureText((await page.getStructTree()) as StructureNode | null),
  };
}

/** The first numbers of the drawing calls of pdf.js: moveTo, lineTo, curveTo, closePath. */
const POINTS_OF_CALL = [1, 1, 3, 0] as const;
const CLOSE = 4;

async function pathsOf(page: Page, height: number): Promise<readonly ReadPath[]> {
  const { OPS } = await getResolvedPDFJS();
  const { fnArray, argsArray } = await page.getOperatorList();
  const paths: ReadPath[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let fill = '';
  const stack: { matrix: Matrix; fill: string }[] = [];
  fnArray.forEach((operator: number, index: number) => {
    const args = argsArray[index];
    if (operator === OPS.save) stack.push({ matrix, fill });
    else if (operator === OPS.restore) ({ matrix, fill } = stack.pop() ?? { matrix, fill });
    else if (operator === OPS.transform) matrix = product(matrix, args as unknown as Matrix);
    else if (operator === OPS.setFillRGBColor) fill = String(args[0]);
    else if (operator === OPS.constructPath) {
      const numbers = (args[1] as readonly (ArrayLike<number> | null)[])[0];
      paths.push({ fill, points: numbers ? pointsOf(numbers, matrix, height) : [] });
    }
  });
  return paths;
}

function pointsOf(numbers: ArrayLike<number>, [a, b, c, d, e, f]: Matrix, height: number) {
  const points: (readonly [number, number])[] = [];
  for (let i = 0; i < numbers.length; ) {
    const call = numbers[i] ?? CLOSE;
    i += 1;
    for (let n = call === CLOSE ? 0 : (POINTS_OF_CALL[call] ?? 0); n > 0; n--) {
      const [x, y] = [numbers[i] ?? 0, numbers[i + 1] ?? 0];
      points.push([(a * x + c * y + e) * MM, (height - (b * x + d * y + f)) * MM]);
      i += 2;
    }
  }
  return points;
}

function product([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

interface StructureNode {
  readonly role?: string;
  readonly children?: readonly StructureNode[];
}

function structureText(node: StructureNode | null): string {
  if (!node?.role) return '';
  const inner = (node.children ?? []).map(structureText).filter(Boolean).join(' ');
  return inner ? `${node.role}(${inner})` : node.role;
}
