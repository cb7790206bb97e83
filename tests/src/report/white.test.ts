import { describe, expect, it } from 'vitest';
import type { ArcRing } from '../../../geometry/arrangement/types.ts';
import { blockingChecks } from '../../../geometry/check/blocking-checks.ts';
import type { Plan, XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/extent.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import { nearestOnEdge } from '../../../geometry/region/nearest.ts';
import { openRooms, usedHatches } from '../../../src/drawing/floor.ts';
import { drawGround, drawLevel } from '../../../src/report/drawing.ts';
import { contentArea } from '../../../src/report/page-frame.ts';
import { PAPERS } from '../../../src/report/paper.ts';
import { type SubjectMatter, subjectMatter } from '../../../src/report/subject-matter.ts';
import { element } from '../../../src/report/svg.ts';
import { hatchDefinitions } from '../../../src/report/svg-shapes.ts';
import { onPaper, toPaper, type View } from '../../../src/report/view.ts';
import { someOf } from '../../helpers/how-many.ts';
import { type Picture, rasterize } from '../../helpers/raster.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';

/** px to a mm of paper. */
const SHARP = 8;
/** Nearer to the edge of the white than this, mm of paper, a pixel belongs to its line. */
const EDGE = 0.45;
/** Between the spots that are looked at, mm of the house: no round figure, so that no grid of the drawing is met. */
const STEP = 173.7;

describe('the ground of the sheet', () => {
  it.each(someOf(SAMPLE_NAMES.slice(0, 4), 2))(
    'of %s is white where a detector may be placed and nowhere else',
    (name) => {
      const plan = nearWashers(samplePlan(name));
      const counts = plan.levels.map(({ id }) => compare(plan, id));
      expect(counts.flatMap(({ wrong }) => wrong)).toEqual([]);
      // Not by seeing nothing: spots of both kinds were looked at.
      expect(counts.reduce((sum, { white }) => sum + white, 0)).toBeGreaterThan(40);
      expect(counts.reduce((sum, { taken }) => sum + taken, 0)).toBeGreaterThan(100);
    },
  );
});

/** 3 ft from washers and dryers: at 10 ft (25 Pa. Code 240.310(a)(2)(iii)) the crowded cellar has next to nothing left to look at. */
function nearWashers(plan: Plan): Plan {
  const { overrides } = plan.protocol;
  const washers = { rule: 'washer-dryer', distance: 914.4, note: 'so that something is white' };
  return { ...plan, protocol: { ...plan.protocol, overrides: [...overrides, washers] } };
}

/** Spots all over the open rooms: what the rules say of each, beside what the drawing shows there. */
function compare(plan: Plan, levelId: string) {
  const matter = subjectMatter(plan, levelId);
  const drawing = drawLevel(matter, contentArea(PAPERS.letter));
  if (!drawing) throw new Error('nothing is drawn');
  const picture = groundPicture(matter, drawing.view);
  const rings = openRooms(matter.region).flatMap((room) => room.rings);
  const spots = openRooms(matter.region)
    .flatMap(({ room }) => spotsOn(room.floorRings))
    .filter((p) => onPaper(drawing.view, edgeDistance(rings, p)) > EDGE);
  const seen = spots.map((at) => ({ at, allowed: mayStand(matter, at), white: isWhite(picture, drawing.view, at) }));
  return {
    wrong: seen.filter(({ allowed, white }) => allowed !== white),
    white: seen.filter(({ allowed }) => allowed).length,
    taken: seen.filter(({ allowed }) => !allowed).length,
  };
}

/** By the checks themselves, not by the region: the level, the sun and the pair are not in the white. */
function mayStand({ plan, model, region }: SubjectMatter, at: XY): boolean {
  const others = ['level', 'direct-sun', 'companion'];
  return blockingChecks(plan, model, region.probe, at).every(({ rule }) => others.includes(rule));
}

function spotsOn(rings: readonly (readonly XY[])[]): readonly XY[] {
  const { minX, minY, maxX, maxY } = ringExtent(rings.flat());
  const spots: XY[] = [];
  for (let x = minX + 31; x < maxX; x += STEP) for (let y = minY + 37; y < maxY; y += STEP) spots.push([x, y]);
  return spots.filter((p) => ringsContain(rings, p));
}

function edgeDistance(rings: readonly ArcRing[], p: XY): number {
  const distances = rings.flat().map((edge) => {
    const [x, y] = nearestOnEdge(edge, p);
    return Math.hypot(x - p[0], y - p[1]);
  });
  return Math.min(Number.POSITIVE_INFINITY, ...distances);
}

function groundPicture(matter: SubjectMatter, view: View): Picture {
  const { width, height } = PAPERS.letter;
  const svg = element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${width} ${height}`, width, height },
    element('defs', {}, hatchDefinitions(usedHatches(matter.region, matter.zones))),
    element('rect', { width, height, fill: '#ffffff' }),
    drawGround(matter, view),
  );
  return rasterize(svg, Math.round(width * SHARP));
}

function isWhite({ pixels, width }: Picture, view: View, at: XY): boolean {
  const [x, y] = toPaper(view, at);
  const scale = width / PAPERS.letter.width;
  const offset = 4 * (Math.floor(y * scale) * width + Math.floor(x * scale));
  return pixels[offset] === 255 && pixels[offset + 1] === 255 && pixels[offset + 2] === 255;
}
