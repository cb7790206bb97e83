/** A thumbnail of a level: floor, allowed area, walls, things, detectors. No text: it could not be read at this size. */
import { levelExtent } from '../../geometry/level/level-extent.ts';
import { toneOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { type Disc, discsApart } from '../drawing/discs-apart.ts';
import { ringsPart } from '../drawing/display-list.ts';
import { floorShapes } from '../drawing/floor.ts';
import { thingShapes } from '../drawing/things.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import { COLOR } from './style.ts';
import { subjectMatter } from './subject-matter.ts';
import { element, num } from './svg.ts';
import { svgShapes, verdictMark } from './svg-shapes.ts';
import { centeredView, toPaper } from './view.ts';

/** Size of the thumbnail, mm of paper, a little smaller than it is shown. */
const PICTURE_MM = { width: 66, height: 44 } as const;
const MARGIN = 2;
/** Radii of the marks of detectors and their distance, mm: two side by side must be distinct in the smallest picture. */
const MARKS = { single: 2.1, pair: 1.5, gap: 0.4 } as const;
/** Walls are drawn at least this thick, mm, so that the rooms of a large house can be seen. */
const LEAST_WALL = 0.5;

/** Returns an SVG drawing of the level; empty if nothing is drawn on it. Throws if the plan does not have the level. */
export function levelPicture(plan: Plan, levelId: string): string {
  const matter = subjectMatter(plan, levelId);
  const extent = levelExtent(matter.level);
  if (!extent) return '';
  const { width, height } = PICTURE_MM;
  const [across, down] = [Math.max(extent.maxX - extent.minX, 1000), Math.max(extent.maxY - extent.minY, 1000)];
  const ratio = Math.max(across / (width - 2 * MARGIN), down / (height - 2 * MARGIN));
  const view = centeredView(extent, { x: 0, y: 0, width, height }, { ratio, words: '' });
  const bodies = [...matter.model.pieces, ...matter.model.joints].map(({ body }) => body);
  const places = matter.detectors.map(({ detector }): Disc => ({ at: toPaper(view, detector.at), radius: 0 }));
  const marks = discsApart(places, MARKS);
  return element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${num(width)} ${num(height)}` },
    element('rect', { width, height, fill: COLOR.paper }),
    svgShapes(view, [
      ...floorShapes(matter.region),
      ...thingShapes(matter.level, NONE),
      { ink: { line: LEAST_WALL, color: 'poche' }, parts: [ringsPart(bodies)] },
      ...wallShapes(matter.model, NONE),
      ...openingShapes(matter.model, NONE),
    ]),
    ...matter.detectors.map(({ report }, index) => {
      const { at, radius } = marks[index] as Disc;
      return verdictMark(toneOf(report), ...at, radius);
    }),
  );
}

const NONE: ReadonlySet<string> = new Set();
