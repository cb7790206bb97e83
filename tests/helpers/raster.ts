/** Renders pages to pixels in Node, with the fonts of the app. */
export { openTypePaths as fontPaths } from '../../src/cli/paper/fonts.ts';
export { type Picture, rasterize } from '../../src/cli/paper/raster.ts';
