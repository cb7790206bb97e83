/** Widths of bars and gaps in turn, in modules, by value: the table of ISO/IEC 15417. 104 starts set B, 106 stops. */
const WIDTHS =
  '212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222 123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321 232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 111422 121124 121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112'.split(
    ' ',
  );
const START_B = 104;
const STOP = 106;

/** Returns the modules of a Code 128 in set B, true for a bar, without the quiet zones. */
export function code128(text: string): readonly boolean[] {
  const values = [...text].map((letter) => letter.charCodeAt(0) - 32);
  const check = values.reduce((sum, value, index) => sum + value * (index + 1), START_B) % 103;
  return [START_B, ...values, check, STOP].flatMap((value) =>
    [...(WIDTHS[value] ?? '')].flatMap((width, index) => Array.from({ length: Number(width) }, () => index % 2 === 0)),
  );
}

/** Returns a video of one frame, 640 by 480 px, in the format of Chromium's fake camera: the bar code, or plain gray for an empty text. */
export function labelVideo(text: string): Buffer {
  const [width, height, wide] = [640, 480, 4];
  const bars = text ? code128(text) : [];
  const left = Math.round((width - bars.length * wide) / 2);
  const luma = Buffer.alloc(width * height, 200);
  for (let y = 140; y < 340; y++) {
    for (let x = 0; x < width; x++) if (bars[Math.floor((x - left) / wide)]) luma[y * width + x] = 40;
  }
  const chroma = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, chroma]);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420\n`), frame, frame]);
}
