import type { Font } from 'fontkit';
import type { PdfDocument, PdfFont } from './pdf-library.ts';

/** The font files of a page, for each weight those of the Latin and the extended letters. WOFF and OpenType files give the same PDF. */
export interface FontFiles {
  readonly regular: readonly Uint8Array[];
  readonly bold: readonly Uint8Array[];
}
export type Weight = keyof FontFiles;

/** A run of letters that one font file has. */
export interface Run {
  readonly font: string;
  readonly text: string;
}

/** Chooses font files by letter, and lists the letters that none of them has. */
export class PageFonts {
  /** Letters that no file has: drawn as an empty box, and reported to the user. */
  readonly lacking = new Set<string>();
  readonly #faces: Readonly<Record<Weight, readonly { readonly name: string; readonly font: Font }[]>>;

  constructor(doc: PdfDocument, files: FontFiles) {
    const register = (weight: Weight) =>
      files[weight].map((bytes, index) => {
        const name = `${weight}-${index}`;
        doc.registerFont(name, bytes as unknown as ArrayBuffer);
        return { name, font: asMeasured(doc.font(name)._font) };
      });
    this.#faces = { regular: register('regular'), bold: register('bold') };
  }

  /** Returns the text in runs of one font file each. */
  runsOf(text: string, weight: Weight): readonly Run[] {
    const runs: { font: string; text: string }[] = [];
    for (const letter of text) {
      const font = this.#fontOf(letter, weight);
      const last = runs.at(-1);
      if (last?.font === font) last.text += letter;
      else runs.push({ font, text: letter });
    }
    return runs;
  }

  #fontOf(letter: string, weight: Weight): string {
    const faces = this.#faces[weight];
    const found = faces.find(({ font }) => font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0));
    if (!found) this.lacking.add(letter);
    return (found ?? faces[0])?.name ?? '';
  }
}

/** Without kerning and ligatures, letters are at the places that the layout of the page measured. */
const FEATURES = { kern: false, liga: false, clig: false } as const;

/** Sets the features for all texts of the font: if each text names them, the library does not cache words and lays out each three times. */
function asMeasured(face: PdfFont): Font {
  const layoutRun = face.layoutRun.bind(face);
  face.layoutRun = (text) => layoutRun(text, FEATURES);
  return face.font;
}
