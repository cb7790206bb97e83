/** Detectors where they stand, each with its tag, and measured lines to what is tightest. */
import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import { checkFigures, checksInOrder, figureWithLimit, toneOf } from '../../geometry/messages/index.ts';
import type { Detector, Plan, XY } from '../../geometry/plan/model.ts';
import { formatLength } from '../../geometry/units/index.ts';
import { drawLabel, labelSlot, makeLabel } from './label.ts';
import { lineSlot, type Placer, type Slot } from './placer.ts';
import { placeTag } from './plan-tags.ts';
import { COLOUR, LINE_MM, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { element, group, line } from './svg.ts';
import { onPaper, toPaper, type View } from './view.ts';

/** A detector is never drawn smaller than this radius, mm: it would be lost. */
const LEAST_RADIUS = 0.8;
/** With more detectors than this, only what is not met is measured on the drawing. */
const FEW = 12;
/** Where all is met, a distance is shown that is at most this many times what is needed, and the tightest in any case. */
const NEAR = 2;
const LENGTH = { size: TYPE_MM.fine, weight: 'bold', colour: COLOUR.dimension } as const;

/** Middle and turn of a text. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** A line that somebody with a tape would draw. */
interface Measured {
  readonly from: XY;
  readonly to: XY;
  readonly words: string;
}

/** The ground that the detectors themselves take. */
export function detectorSlots({ detectors }: SubjectMatter, view: View): readonly Slot[] {
  return detectors.map(({ detector }) => {
    const [x, y] = toPaper(view, detector.at);
    const across = drawnRadius(view, detector) * 2 + 0.6;
    return { x, y, width: across, height: across, turn: 0 };
  });
}

export function drawDetectors(matter: SubjectMatter, view: View): string {
  return group({}, ...matter.detectors.map(({ detector, report }) => drawDetector(view, detector, report)));
}

/** Measured lines first, then the lengths on them, then the tags, which have the most freedom. */
export function placeDetectorNotes(matter: SubjectMatter, view: View, placer: Placer): string {
  const lines = measuredLines(matter, view);
  for (const { from, to } of lines) placer.take(lineSlot(from[0], from[1], to[0], to[1], 0.5), 'line');
  const measured = lines.map((one) => drawMeasured(one, placer));
  const tags = matter.detectors.map((placed) => placeTag(placed, view, placer));
  return [...measured, ...tags].join('');
}

/** Every distance that is not met or tight, else what is near its limit; of a pair, the same subject once. */
function measuredLines({ plan, detectors }: SubjectMatter, view: View): readonly Measured[] {
  const seen = new Set<string>();
  return detectors.flatMap(({ detector, report }) => {
    const measured = checksInOrder(report.checks).filter(
      ({ witness, measured: length }) => witness !== null && length !== null,
    );
    const troubled = measured.filter(({ verdict }) => verdict !== 'clear');
    const clear = measured.filter(({ verdict, rule }) => verdict === 'clear' && rule !== 'companion');
    const near = clear
      .filter((check, i) => i === 0 || (check.measured ?? 0) < NEAR * (check.required ?? 0))
      .slice(0, 2);
    const rest = detectors.length > FEW ? [] : near;
    return (troubled.length > 0 ? troubled : rest).flatMap((check) => {
      const key = `${detector.pair ?? detector.id} ${check.subject} ${check.reason}`;
      if (seen.has(key) || !check.witness) return [];
      seen.add(key);
      return [
        {
          from: toPaper(view, check.witness.rim),
          to: toPaper(view, check.witness.subject),
          words: lengthWords(check, plan),
        },
      ];
    });
  });
}

/** Toward caution, as in the table: a least distance is rounded down, a greatest one up. Only a stream is reached into. */
function lengthWords(check: Check, plan: Plan): string {
  if ((check.measured ?? 0) < 0)
    return `${formatLength(-(check.measured ?? 0), plan.display.length, 'up')} into the stream`;
  return check.verdict === 'clear' ? checkFigures(check, plan).measured : figureWithLimit(check, plan);
}

function drawMeasured({ from, to, words }: Measured, placer: Placer): string {
  const style = { stroke: COLOUR.dimension, 'stroke-width': LINE_MM.measured };
  const drawn = line(from[0], from[1], to[0], to[1], style) + tick(from, to, style) + tick(to, from, style);
  const label = makeLabel([{ text: words, style: LENGTH }]);
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const turn = uprightTurn((angle * 180) / Math.PI);
  const off = label.height / 2 + 0.3;
  const upright = ((turn - 90) * Math.PI) / 180;
  const places = LENGTH_PLACES.flatMap(([share, side]): readonly Place[] => {
    const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    return [
      { x: x - side * Math.cos(upright) * off, y: y - side * Math.sin(upright) * off, turn },
      { x: x + side * (label.width / 2 + 0.6), y, turn: 0 },
      ...LEVEL_PLACES.map(([shift, gap]) => ({
        x: x + side * shift * label.width,
        y: y + Math.sign(gap) * (off + Math.abs(gap)),
        turn: 0,
      })),
    ];
  });
  const fits = ({ x, y, turn: t }: Place) => placer.isFree(labelSlot(label, x, y, t), ['edge', 'thing']);
  // Along the line where it is long enough, else level beside it.
  const place = places.find((one) => one.turn === turn && fits(one)) ?? places.find(fits);
  if (!place) return drawn;
  placer.take(labelSlot(label, place.x, place.y, place.turn));
  return drawn + drawLabel(label, place.x, place.y, place.turn);
}

/** Shares of the line and sides of it on which its length may stand. */
const LENGTH_PLACES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].flatMap((share) => [
  [share, -1] as const,
  [share, 1] as const,
]);

/** The same line with its text never upside down, degrees. */
function uprightTurn(degrees: number): number {
  if (degrees >= 90) return degrees - 180;
  return degrees < -90 ? degrees + 180 : degrees;
}

/** Level beside the line: moved along by a share of the text, and off the line by so many mm, above or below. */
const LEVEL_PLACES = [0.3, 1.3].flatMap((gap) =>
  [0, 0.25, 0.5].flatMap((shift) => [[shift, -gap] as const, [shift, gap] as const]),
);

/** A short stroke across the end of a measured line. */
function tick(at: XY, other: XY, style: Readonly<Record<string, string | number>>): string {
  const length = Math.hypot(other[0] - at[0], other[1] - at[1]);
  if (length < 0.5) return '';
  const [nx, ny] = [(-(other[1] - at[1]) / length) * 0.9, ((other[0] - at[0]) / length) * 0.9];
  return line(at[0] - nx, at[1] - ny, at[0] + nx, at[1] + ny, style);
}

function drawDetector(view: View, detector: Detector, report: DetectorReport): string {
  const [x, y] = toPaper(view, detector.at);
  const r = drawnRadius(view, detector);
  const colour = COLOUR.verdict[toneOf(report)].line;
  return (
    element('circle', { cx: x, cy: y, r, fill: COLOUR.paper, stroke: colour, 'stroke-width': LINE_MM.detector }) +
    element('circle', { cx: x, cy: y, r: Math.min(0.35, r * 0.4), fill: colour })
  );
}

function drawnRadius(view: View, { radius }: Detector): number {
  return Math.max(LEAST_RADIUS, onPaper(view, radius));
}
