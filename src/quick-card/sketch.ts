import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Fixture, Mm, PlanObject } from '../../geometry/plan/model.ts';
import { capital, FIXTURE_NOUN } from '../../geometry/plan/nouns.ts';
import { shapeMiddle } from '../../geometry/plane/body.ts';
import { type Extent, ringExtent } from '../../geometry/plane/extent.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { floorShapes } from '../drawing/floor.ts';
import { dimensionLine } from '../drawing/labels/dimensions.ts';
import { thingExtent, thingShapes } from '../drawing/things.ts';
import { openingShapes, wallShapes } from '../drawing/walls.ts';
import type { Area } from '../report/paper.ts';
import { COLOR, TYPE_MM } from '../report/style.ts';
import { element, group, num } from '../report/svg.ts';
import { ON_PAPER, svgShapes, verdictMark } from '../report/svg-shapes.ts';
import { drawText, SET_AS_MEASURED } from '../report/text.ts';
import { centeredView, toPaper, type View } from '../report/view.ts';
import type { QuickCard } from './describe-card.ts';
import { boxOf, CAP, FIGURE, FIGURES, placeFigures, SPOT } from './figures.ts';
import { middleOf } from './spot.ts';
import { THINGS } from './things.ts';

/** The room with the spot and its two tape distances. White is the allowed area. */

/** Depth shown beyond the floor with and without a thing behind a wall, mm; paper for the names of the walls, mm. */
const BEHIND: Mm = 900;
const WALL: Mm = 320;
const NAMES = 5;
const NONE: ReadonlySet<string> = new Set();

/** Returns the sketch of a card within an area of the paper; empty if no room is drawn. */
export function drawSketch(card: QuickCard, area: Area): string {
  const { plan, level, model } = card;
  const floor = model.rooms.flatMap(({ floorRings }) => floorRings).flat();
  if (floor.length === 0) return '';
  const near = grown(ringExtent(floor), WALL);
  const isBehind = level.fixtures.some(
    (thing) => overlap(thingExtent(thing), grown(near, BEHIND)) && !within(thing, near),
  );
  const extent = isBehind ? grown(ringExtent(floor), BEHIND) : near;
  const view = viewOf(extent, area);
  const region = levelRegion(plan, model, probeOf(card));
  const isSeen = (thing: Fixture | PlanObject) => overlap(thingExtent(thing), extent);
  const clip = 'card-room';
  const [x, y] = toPaper(view, [extent.minX, extent.minY]);
  const [right, bottom] = toPaper(view, [extent.maxX, extent.maxY]);
  const shapes = [
    ...floorShapes(region),
    ...thingShapes(level, NONE, isSeen),
    ...wallShapes(model, NONE),
    ...openingShapes(model, NONE),
  ];
  return [
    element('clipPath', { id: clip }, element('rect', { x, y, width: right - x, height: bottom - y })),
    group({ 'clip-path': `url(#${clip})` }, svgShapes(view, shapes)),
    drawNames(card, view, extent),
    drawWallNames({ x, y, width: right - x, height: bottom - y }),
    drawSpot(card, view, [paperArea(view, ringExtent(floor)), area]),
  ].join('');
}

/** Returns the sketch as a separate SVG document of a width and height, mm. */
export function sketchPicture(card: QuickCard, width: number, height: number): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      ...SET_AS_MEASURED,
    },
    element('rect', { width, height, fill: COLOR.paper }),
    drawSketch(card, { x: 0, y: 0, width, height }),
  );
}

function probeOf({ level }: QuickCard): Probe {
  return level.detectors[0] ?? USUAL_DETECTOR;
}

function viewOf(extent: Extent, area: Area): View {
  const { minX, minY, maxX, maxY } = extent;
  const [width, height] = [area.width - 2 * NAMES, area.height - 2 * NAMES];
  const ratio = Math.max((maxX - minX) / width, (maxY - minY) / height);
  return centeredView(extent, area, { ratio, words: '' });
}

function paperArea(view: View, { minX, minY, maxX, maxY }: Extent): Area {
  const [[x, y], [right, bottom]] = [toPaper(view, [minX, minY]), toPaper(view, [maxX, maxY])];
  return { x, y, width: right - x, height: bottom - y };
}

function grown({ minX, minY, maxX, maxY }: Extent, by: Mm): Extent {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

const overlap = (a: Extent, b: Extent): boolean =>
  a.minX < b.maxX && a.maxX > b.minX && a.minY < b.maxY && a.maxY > b.minY;

const within = (thing: Fixture, { minX, minY, maxX, maxY }: Extent): boolean => {
  const own = thingExtent(thing);
  return own.minX >= minX && own.maxX <= maxX && own.minY >= minY && own.maxY <= maxY;
};

/** The names of things and openings, each in its middle. */
function drawNames({ level, model }: QuickCard, view: View, extent: Extent): string {
  const style = { size: TYPE_MM.lead, anchor: 'middle', halo: true } as const;
  const named = level.fixtures
    .filter((thing) => overlap(thingExtent(thing), extent))
    .map((fixture) => {
      const row = Object.values(THINGS).find((each) => each.fixture === fixture.kind);
      return {
        at: shapeMiddle(fixture.shape),
        text: row?.name ?? capital(FIXTURE_NOUN[fixture.kind]),
        isUpright: false,
      };
    });
  const openings = model.openings
    .filter(({ body }) => overlap(ringExtent(body), extent))
    .map(({ opening, body }) => ({
      at: middleOf(body),
      text: opening.kind === 'window' ? 'Window' : 'Door',
      isUpright: isTall(ringExtent(body)),
    }));
  return [...named, ...openings]
    .map(({ at, text, isUpright }) => {
      const [x, y] = toPaper(view, at);
      const turn = isUpright ? { transform: `rotate(-90 ${num(x)} ${num(y)})` } : {};
      return drawText(x, y + style.size * 0.35, text, style, turn);
    })
    .join('');
}

const isTall = ({ minX, minY, maxX, maxY }: Extent): boolean => maxY - minY > maxX - minX;

function drawWallNames({ x, y, width, height }: Area): string {
  const style = { size: TYPE_MM.lead, anchor: 'middle', color: COLOR.inkSoft } as const;
  const upright = (at: number, turn: number, text: string) => {
    const middle = y + height / 2;
    return drawText(at, middle, text, style, { transform: `rotate(${turn} ${num(at)} ${num(middle)})` });
  };
  return [
    drawText(x + width / 2, y - 1.2, 'Far wall', style),
    drawText(x + width / 2, y + height + 3.4, 'You come in through this wall', style),
    upright(x - 1.6, -90, 'Left wall'),
    upright(x + width + 1.6, 90, 'Right wall'),
  ].join('');
}

/** The tape distances, each beside its line, then the symbol of the verdict at each detector. */
function drawSpot({ spot, level }: QuickCard, view: View, areas: readonly Area[]): string {
  if (!spot) return '';
  const tapes = spot.tapes.map(({ line: [from, to], length }) => ({
    line: [toPaper(view, from), toPaper(view, to)] as const,
    length,
  }));
  const spots = spot.detectors.map(({ at }) => toPaper(view, at));
  const lines = tapes.map(({ line: [a, b] }) => svgShapes(ON_PAPER, [dimensionLine(a, b, FIGURE)]));
  const things = level.fixtures.map((thing) => {
    const { minX, minY, maxX, maxY } = thingExtent(thing);
    return boxOf(toPaper(view, [minX, minY]), toPaper(view, [maxX, maxY]));
  });
  const figures = placeFigures(tapes, spots, areas, things).map(({ text, x, y }) =>
    drawText(x, y + CAP / 2, text, FIGURES),
  );
  return [...lines, ...figures, ...spots.map(([x, y]) => verdictMark(spot.tone, x, y, SPOT))].join('');
}
