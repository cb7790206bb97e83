import { Resvg } from '@resvg/resvg-js';
import { sizeOfPage } from '../../report/paper.ts';
import { withDensity } from '../../report/png-density.ts';
import { FURTHER_FAMILY, openTypePaths } from './fonts.ts';
import { withPartedTexts } from './part-texts.ts';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** RGBA of each pixel, 0 to 255. */
  readonly pixels: Buffer;
  /** The PNG file with its size on paper, encoded on access: encoding takes longer than drawing. */
  readonly png: Uint8Array;
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
      return withDensity(image.asPng(), (image.width / sizeOfPage(svg).width) * 25.4);
    },
  };
}
