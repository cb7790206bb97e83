import { Resvg } from '@resvg/resvg-js';
import { FURTHER_FAMILY, openTypePaths } from './fonts.ts';
import { withPartedTexts } from './part-texts.ts';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** RGBA of each pixel, 0 to 255. */
  readonly pixels: Buffer;
  /** The PNG file, encoded on access: encoding takes longer than drawing. */
  readonly png: Buffer;
}

/** Returns a page as a picture of `width` px. */
export function rasterize(svg: string, width: number): Picture {
  const image = new Resvg(withPartedTexts(svg, FURTHER_FAMILY), {
    fitTo: { mode: 'width', value: width },
    font: {
      loadSystemFonts: false,
      fontFiles: [...openTypePaths()],
      defaultFontFamily: 'Atkinson Hyperlegible Next',
    },
  }).render();
  return {
    width: image.width,
    height: image.height,
    pixels: image.pixels,
    get png() {
      return image.asPng();
    },
  };
}
