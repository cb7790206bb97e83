import type { Source } from '../../geometry/rules/types.ts';

/** Returns a published source, marked with how its text was read. */
export const source = (mark: Source['mark'], cite: string): Source => ({ mark, cite });

/** The published sources of the protocol. Each use names the clause. */
export const MAH = (clause: string) => source('primary', `ANSI/AARST MAH-2019, ${clause}`);
export const MALB = (clause: string) => source('primary', `ANSI/AARST MALB-2014 with 1/21 revisions, ${clause}`);
export const MSQA = (clause: string) => source('primary', `ANSI/AARST MS-QA-2019, ${clause}`);
export const NEW_JERSEY = (clause: string) => source('primary', `N.J.A.C. 7:28-27.${clause}`);
export const PENNSYLVANIA_RULES = (clause: string) => source('primary', `25 Pa. Code 240.310${clause}`);
/** Only (a)(1) and (b)(1) of this section were read in the primary text. */
export const ILLINOIS_RULES = (clause: string) => source('primary', `32 Ill. Adm. Code 422.130${clause}`);
/** The rest of that section was read in training copies and summaries. */
export const ILLINOIS_COPY = (clause: string) => source('secondary', `32 Ill. Adm. Code 422.130${clause}`);
export const ILLINOIS_APPENDIX_B = source('primary', '32 Ill. Adm. Code Part 422, Appendix B');
export const MAMF = (clause: string) => source('primary', `ANSI/AARST MAMF-2017 with 1/21 revisions, ${clause}`);
/** Our interpretation of a text that was written for another case, or does not say. */
export const ourReading = (cite: string) => source('our-reading', cite);
