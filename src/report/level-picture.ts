/** A level the size of a playing card: floor, white, walls, things, detectors. No words: they would not be read. */
import { levelExtent } from '../../geometry/level/level-extent.ts';
import { type Tone, toneOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { drawThings } from './plan-things.ts';
import { drawWalls } from './plan-walls.ts';
import { COLOUR, TAKEN_GROUND } from './style.ts';
import { subjectMatter } from './subject-matter.ts';
import { element, group, num } from './svg.ts';
import { arcRingsPath, ringsPath, toPaper, type View } from './view.ts';

/** mm of paper, a little smaller than it is shown. */
const PICTURE_MM = { width: 66, height: 44 } as const;
const MARGIN = 2;
/** A detector is what one looks for. */
const MARK_RADIUS = 1.7;
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
  const view: View = {
    scale: { ratio, words: '' },
    originX: width / 2 - (extent.minX + extent.maxX) / 2 / ratio,
    originY: height / 2 - (extent.minY + extent.maxY) / 2 / ratio,
  };
  const outline = { stroke: COLOUR.poche, 'stroke-width': LEAST_WALL, 'stroke-linejoin': 'round' };
  const bodies = [...matter.model.pieces, ...matter.model.joints].map(({ body }) => body);
  return element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${num(width)} ${num(height)}` },
    element('rect', { width, height, fill: COLOUR.paper }),
    ...matter.region.rooms.map(({ room, rings, barred }) =>
      element('path', {
        d: ringsPath(view, room.floorRings) + (barred ? '' : arcRingsPath(view, rings)),
        fill: barred ? COLOUR.well : TAKEN_GROUND,
        'fill-rule': 'evenodd',
      }),
    ),
    drawThings(matter.level, view),
    element('path', { d: ringsPath(view, bodies), fill: COLOUR.poche, ...outline }),
    drawWalls(matter.model, view),
    group({}, ...matter.detectors.map(({ detector, report }) => mark(view, detector.at, toneOf(report)))),
  );
}

/** A disc with its axis in the tone of its verdict; the word beside the picture says it without colour. */
function mark(view: View, at: readonly [number, number], tone: Tone): string {
  const [cx, cy] = toPaper(view, at);
  const stroke = COLOUR.verdict[tone].line;
  return (
    element('circle', { cx, cy, r: MARK_RADIUS, fill: COLOUR.paper, stroke, 'stroke-width': 0.8 }) +
    element('circle', { cx, cy, r: MARK_RADIUS * 0.3, fill: stroke })
  );
}
