/** Formats and parses lengths and areas as a person reads them on a tape. Stored values stay in millimeters. */
export { FOOT, INCH, type LengthUnit, SQUARE_FOOT } from './constants.ts';
export { formatArea, formatLength, formatMeasured, formatRequired, type Rounding } from './format.ts';
export { type LengthOptions, parseLength } from './parse.ts';
