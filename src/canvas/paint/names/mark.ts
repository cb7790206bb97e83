import type { Pen } from '../pen.ts';

/** Something written, with its place. Drawn by a pen whose view has the scale that it was laid out for. */
export type Mark = (pen: Pen) => void;
