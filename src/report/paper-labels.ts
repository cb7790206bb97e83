/** The labels of a plan on paper: measures for their layout, and their SVG. */
import type { DetectorReport } from '../../geometry/check/types.ts';
import { checksInOrder, headlineText, toneOf } from '../../geometry/messages/index.ts';
import type { Detector } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import { inked, linesPart } from '../drawing/display-list.ts';
import type { Label, LabelMedium } from '../drawing/labels/label.ts';
import type { MeasuredLine } from '../drawing/labels/paper-lines.ts';
import { slotPart } from '../drawing/labels/slot.ts';
import type { TagPlace } from '../drawing/labels/tags.ts';
import type { TapedGap } from '../drawing/labels/taped.ts';
import { CAP_HEIGHT, type Text } from '../drawing/text.ts';
import { measureWords } from '../drawing/words.ts';
import type { Area } from './paper.ts';
import { DIMENSIONS_MM, SMALL_RATIO, TYPE_MM } from './style.ts';
import type { SubjectMatter } from './subject-matter.ts';
import { num } from './svg.ts';
import { paperColor, svgShapes } from './svg-shapes.ts';
import { tapeDistances } from './tape-distances.ts';
import { drawText, shortened, textWidth } from './text.ts';
import { toPaper, type View } from './view.ts';

/** Width beyond which a label is shortened on the drawing, mm of paper; the tables have it whole. */
const LABEL_WIDTH = 24;
/** Distances from the box's edge to the text, and from label to word, mm of paper; height of the box as a multiple of the type size. */
const TAG = { pad: 1.1, gap: 1.2, height: 1.5 } as const;
/** Least radius of a detector's symbol, mm of paper. */
const SYMBOL = 1.5;

export function paperMedium({ scale: { ratio }, originX, originY }: View, area: Area): LabelMedium {
  const { outside, inside, step } = DIMENSIONS_MM;
  return {
    measure: (text, { size, bold }) => textWidth(text, { size, weight: bold ? 'bold' : 'regular' }),
    type: {
      fine: TYPE_MM.fine * ratio,
      small: TYPE_MM.small * ratio,
      tag: TYPE_MM.body * TAG.height * ratio,
      name: TYPE_MM.lead * ratio,
    },
    area: {
      x: (area.x - originX) * ratio,
      y: (area.y - originY) * ratio,
      width: area.width * ratio,
      height: area.height * ratio,
    },
    isSmall: ratio > SMALL_RATIO,
    roomSizes: true,
    dimensions: { outside: outside * ratio, inside: inside * ratio, step: step * ratio, target: 0 },
    symbol: SYMBOL * ratio,
  };
}

export function drawLabels(view: View, labels: readonly Label[]): string {
  const shapes = labels.flatMap((label) => label.shapes);
  const texts = labels.flatMap((label) => label.texts);
  // All halos are drawn before all letters, so that the halo of a line does not cover the line above.
  const edges = texts.filter(({ style }) => style.halo).map((text) => svgText(view, text, true));
  return [svgShapes(view, shapes), ...edges, ...texts.map((text) => svgText(view, text, false))].join('');
}

function svgText(view: View, { text, at, turn, style: { size: mm, bold, color } }: Text, halo: boolean): string {
  const [x, y] = toPaper(view, at);
  const size = mm / view.scale.ratio;
  const more = turn === 0 ? {} : { transform: `rotate(${num(turn)} ${num(x)} ${num(y)})` };
  const look = { size, weight: bold ? 'bold' : 'regular', color: paperColor(color), anchor: 'middle', halo } as const;
  return drawText(x, y + (size * CAP_HEIGHT) / 2, text, look, more);
}

/** Returns a detector's label and its verdict in words, with their widths and that of the box around them, mm of paper. */
export function tagTexts(detector: Detector, report: DetectorReport) {
  const size = TYPE_MM.body;
  const label = shortened(detector.label.trim() || detector.id, LABEL_WIDTH, { size, weight: 'bold' });
  const word = headlineText(report);
  const [long, wide] = [textWidth(label, { size, weight: 'bold' }), textWidth(word, { size })];
  return { label, word, long, wide, width: long + wide + TAG.gap + 2 * TAG.pad };
}

/** Returns label and verdict in a box, with the leader to the detector. */
export function tagLabel(view: View, detector: Detector, report: DetectorReport, { slot, leader }: TagPlace): Label {
  const { ratio } = view.scale;
  const { label, word, long, wide } = tagTexts(detector, report);
  const tone = toneOf(report);
  /** @param off from an end of the box, mm of paper */
  const text = (words: string, end: -1 | 1, off: number): Text => {
    const bold = end < 0;
    const style = { size: TYPE_MM.body * ratio, bold, color: bold ? 'ink' : tone } as const;
    return { text: words, at: [slot.x + end * (slot.width / 2 - off * ratio), slot.y], turn: 0, style };
  };
  return {
    texts: [text(label, -1, TAG.pad + long / 2), text(word, 1, TAG.pad + wide / 2)],
    shapes: [
      ...(leader ? [inked({ line: 'leader', color: tone }, linesPart([leader]))] : []),
      inked({ fill: 'paper', line: 'tag', color: tone }, slotPart(slot)),
    ],
    slots: [slot],
  };
}

/** With more detectors than this, only distances of rules that are not met are drawn. */
const FEW = 12;
/** A clear distance is drawn if it is less than this many times the required one; where all checks are clear, the tightest always is. */
const NEAR = 1.5;

/** Returns the measured distances of every check that is not clear or is near its limit; of a pair, one for each subject. */
export function measuredLines({ plan, detectors }: SubjectMatter): readonly MeasuredLine[] {
  const seen = new Set<string>();
  return detectors.flatMap(({ detector, report }) => {
    const measured = checksInOrder(report.checks).filter(
      ({ witness, measured: length }) => witness !== null && length !== null,
    );
    const troubled = measured.filter(({ verdict }) => verdict !== 'clear');
    const clear = measured.filter(({ verdict, rule }) => verdict === 'clear' && rule !== 'companion');
    const near = clear.filter(
      (check, i) => (i === 0 && troubled.length === 0) || (check.measured ?? 0) < NEAR * (check.required ?? 0),
    );
    return [...troubled, ...(detectors.length > FEW ? [] : near)].flatMap((check): readonly MeasuredLine[] => {
      const key = `${detector.pair ?? detector.id} ${check.subject} ${check.reason}`;
      if (seen.has(key) || !check.witness) return [];
      seen.add(key);
      return [{ from: check.witness.rim, to: check.witness.subject, words: measureWords(check, plan) }];
    });
  });
}

/** A taped distance that ends this near to a measured one is left out, mm. */
const SAME_END = 150;

/** Returns distances from each detector to the nearer wall on either axis, without those that `measured` shows; a pair shares `key`. */
export function tapedGaps(
  { plan, model, detectors }: SubjectMatter,
  measured: readonly MeasuredLine[],
): readonly TapedGap[] {
  if (detectors.length > FEW) return [];
  return detectors.flatMap(({ detector }) =>
    tapeDistances(plan, model, detector)
      .filter(({ line: [, end] }) => measured.every(({ to }) => distance(to, end) > SAME_END))
      .map(({ side, line, length }) => ({ line, words: length, key: `${detector.pair ?? detector.id} ${side}` })),
  );
}
