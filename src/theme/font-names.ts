/** Font families of style sheets and canvas. */
export const TEXT_FONT = 'Atkinson Hyperlegible Next';
export const FIGURE_FONT = 'Atkinson Hyperlegible Mono';
