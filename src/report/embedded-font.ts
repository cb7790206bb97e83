/** The sheet's font inside the SVG: a picture that is drawn from an SVG loads nothing else. */
import latin400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2?url';
import latin700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2?url';
import extended400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff2?url';
import extended700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff2?url';

interface Face {
  readonly url: string;
  readonly weight: number;
  /** Characters of the face; left out, all that no other face claims. */
  readonly range?: string;
}

/** Letters of the extended files: Latin Extended-A and -B, and Latin Extended Additional (Unicode blocks). */
const EXTENDED = /[\u0100-\u024f\u1e00-\u1eff]/;
const EXTENDED_RANGE = 'U+0100-024F, U+1E00-1EFF';

const FACES: readonly Face[] = [
  { url: latin400, weight: 400 },
  { url: latin700, weight: 700 },
];
const EXTENDED_FACES: readonly Face[] = [
  { url: extended400, weight: 400, range: EXTENDED_RANGE },
  { url: extended700, weight: 700, range: EXTENDED_RANGE },
];

const loaded = new Map<string, Promise<string>>();

/** The SVG with the faces that its text needs. Rejects with a sentence when a font file cannot be had. */
export async function withEmbeddedFont(svg: string): Promise<string> {
  const faces = EXTENDED.test(svg) ? [...FACES, ...EXTENDED_FACES] : FACES;
  const rules = await Promise.all(faces.map(faceRule));
  return svg.replace(/>/, `><style>${rules.join('')}</style>`);
}

async function faceRule({ url, weight, range }: Face): Promise<string> {
  const data = await dataOf(url);
  const characters = range ? `unicode-range:${range};` : '';
  return `@font-face{font-family:'Atkinson Hyperlegible Next';font-weight:${weight};${characters}src:url(${data}) format('woff2')}`;
}

/** Once a session; a failure is not cached, so that the next try may succeed. */
function dataOf(url: string): Promise<string> {
  const known = loaded.get(url);
  if (known) return known;
  const wanted = fetchData(url);
  loaded.set(url, wanted);
  wanted.catch(() => loaded.delete(url));
  return wanted;
}

async function fetchData(url: string): Promise<string> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new Error(
      'The font of the sheet could not be loaded, so no picture was made. Reload the page and try again.',
    );
  }
  const bytes = new Uint8Array(await response.arrayBuffer());
  let text = '';
  // In pieces: a call takes only so many arguments.
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return `data:font/woff2;base64,${btoa(text)}`;
}
