/** A level the size of a playing card: floor, white, walls, things, detectors. No words: they would not be read. */
import { levelExtent } from '../../geometry/level/level-extent.ts';
import { toneOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { ringsPart } from '../drawing/display-list.ts';
import { floorShapes } from '../drawing/floor.ts';
import { thingShapes } from '../drawing/things.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import { COLOR } from './style.ts';
import { subjectMatter } from './subject-matter.ts';
import { element, num } from './svg.ts';
import { svgShapes, verdictMark } from './svg-shapes.ts';
import { centeredView, toPaper } from './view.ts';

/** mm of paper, a little smaller than it is shown. */
const PICTURE_MM = { width: 66, height: 44 } as const;
const MARGIN = 2;
/** A detector is what one looks for. */
const MARK_RADIUS = 2.1;
/** Walls are drawn at least this thick, so that a large house keeps its rooms. */
const LEAST_WALL = 0.5;

/** An SVG drawing of the level; empty where nothing is drawn on it. The plan must have the level. */
export function levelPicture(plan: Plan, levelId: string): string {
  const matter = subjectMatter(plan, levelId);
  const extent = levelExtent(matter.level);
  if (!extent) return '';
  const { width, height } = PICTURE_MM;
  const [across, down] = [Math.max(extent.maxX - extent.minX, 1000), Math.max(extent.maxY - extent.minY, 1000)];
  const ratio = Math.max(across / (width - 2 * MARGIN), down / (height - 2 * MARGIN));
  const view = centeredView(extent, { x: 0, y: 0, width, height }, { ratio, words: '' });
  const bodies = [...matter.model.pieces, ...matter.model.joints].map(({ body }) => body);
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
    ...matter.detectors.map(({ detector, report }) =>
      verdictMark(toneOf(report), ...toPaper(view, detector.at), MARK_RADIUS),
    ),
  );
}

const NONE: ReadonlySet<string> = new Set();
