/**
 * What laser tapes that work as a keyboard type, and the length, mm. The forms are common practice, no published source; the values
 * are worked out by hand from 1 in = 25.4 mm exactly.
 */
export const TAPE_FORMS: readonly (readonly [typed: string, mm: number])[] = [
  ['12\'06"1/2', 3822.7],
  ['0\'06"13/16', 173.0375],
  ["12'06''1/2", 3822.7],
  ['12\' 6 1/2"', 3822.7],
  ["12'6", 3810],
  ['12\'6"', 3810],
  ['6"13/16', 173.0375],
  ['150 1/2in', 3822.7],
  ['150.5in', 3822.7],
  ['150.5"', 3822.7],
  ['12.54ft', 12.54 * 304.8],
  ["12.54'", 12.54 * 304.8],
  ['12ft6in', 3810],
  ['12ft 6 1/2in', 3822.7],
  ['3.812m', 3812],
  ['3.812 m', 3812],
  ['3,812m', 3812],
  ['381.2cm', 3812],
  ['3812mm', 3812],
  ['3812 mm', 3812],
];
