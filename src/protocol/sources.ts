import type { Source } from '../../geometry/rules/types.ts';

/** A published text and how it was come by. */
export const source = (mark: Source['mark'], cite: string): Source => ({ mark, cite });

/** The texts that the rules of a job are taken from. Each use says which clause. */
export const MAH = (clause: string) => source('primary', `ANSI/AARST MAH-2019, ${clause}`);
export const MALB = (clause: string) => source('primary', `ANSI/AARST MALB-2014 with 1/21 revisions, ${clause}`);
export const MSQA = (clause: string) => source('primary', `ANSI/AARST MS-QA-2019, ${clause}`);
export const NEW_JERSEY = (clause: string) => source('primary', `N.J.A.C. 7:28-27.${clause}`);
export const PENNSYLVANIA = (clause: string) => source('primary', `25 Pa. Code 240.310${clause}`);
/** Of this section the opening was read: (a)(1) and (b)(1). */
export const ILLINOIS = (clause: string) => source('primary', `32 Ill. Adm. Code 422.130${clause}`);
/** All else of it was read in copies for training and in summaries. */
export const ILLINOIS_COPY = (clause: string) => source('secondary', `32 Ill. Adm. Code 422.130${clause}`);
export const ILLINOIS_APPENDIX_B = source('primary', '32 Ill. Adm. Code Part 422, Appendix B');
export const MAMF = (clause: string) => source('primary', `ANSI/AARST MAMF-2017 with 1/21 revisions, ${clause}`);
/** What we make of a text that was written for something else, or is silent. */
export const ourReading = (cite: string) => source('our-reading', cite);
