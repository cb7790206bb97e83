/** Lengths and areas in words, and back: what a person reads on a tape. Everything stored stays in millimetres. */
export { FOOT, INCH, type LengthUnit, SQUARE_FOOT } from './constants.ts';
export { formatArea, formatLength, formatMeasured, formatRequired, type Rounding } from './format.ts';
export { type LengthOptions, parseLength } from './parse.ts';
