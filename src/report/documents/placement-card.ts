import { checkPlan } from '../../../geometry/check/check-detector.ts';
import { headlineText } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { lowerFirst } from '../../../geometry/plan/nouns.ts';
import { isLongTerm, labDaysAreKnown } from '../../protocol/timing/exposure-limits.ts';
import {
  describeVerification,
  type VerifiedReport,
  verifiedLevels,
} from '../../protocol/validity/verified-placement.ts';
import { type Block, paragraph, space, stack } from '../block.ts';
import type { TextStyle } from '../text.ts';
import { type PlacedDetector, placedDetectors } from './detector-places.ts';
import { bullet, type DocumentOrder, drawHandout, heading, READ_SOFT, timeRows, typeSizes } from './document-blocks.ts';
import { clockLine, formatForOccupants, testTimes } from './format-times.ts';
import { SAFETY } from './occupant-texts.ts';

const CARD = {
  title: 'Where and when to place the detectors',
  name: 'Placement card',
  sizes: typeSizes(4.8, 2.1),
  gap: 1.2,
};

/** Returns the card for the person who places the detectors: where, how high, when and how. */
export function drawPlacementCard(order: DocumentOrder): readonly string[] {
  const card = contentOf(order); // once, not for each type size
  return drawHandout(order, CARD, (width, style) => cardBlocks(order, card, width, style));
}

interface Place extends PlacedDetector {
  readonly report: VerifiedReport | undefined;
}
interface CardContent {
  readonly places: readonly Place[];
  /** How the verdicts were computed. */
  readonly verification: readonly string[];
}

function contentOf({ plan, computed = new Map() }: DocumentOrder): CardContent {
  const placement = verifiedLevels(plan, checkPlan(plan).levels, computed);
  const reports = placement.flatMap(({ detectors }) => detectors);
  const places = placedDetectors(plan).map((placed) => ({
    ...placed,
    report: reports.find(({ id }) => id === placed.detector.id),
  }));
  return { places, verification: describeVerification(plan, placement) };
}

function cardBlocks(
  order: DocumentOrder,
  { places, verification }: CardContent,
  width: number,
  style: TextStyle,
): readonly Block[] {
  const { plan } = order;
  return [
    heading('Where', width),
    ...(places.length === 0
      ? [paragraph('No detector is placed on the plan yet.', width, style)]
      : places.map((each) => placeBlock(each, width, style))),
    ...verification.map((words) => paragraph(words, width, READ_SOFT)),
    stack([
      heading('When', width),
      timeRows(testTimes(plan, formatForOccupants, order), width, style),
      space(0.6),
      paragraph(clockLine(plan), width, READ_SOFT),
    ]),
    stack([heading('How', width), ...steps(plan).map((words) => bullet(words, width, style))], 0.6),
  ];
}

function placeBlock(
  { detector, name, level, room, fromWalls, height, carrier, report }: Place,
  width: number,
  style: TextStyle,
): Block {
  const bold: TextStyle = { ...style, weight: 'bold' };
  const pair = detector.pair === null ? '' : ` Side by side with the other of pair ${detector.pair}.`;
  return stack(
    [
      paragraph(`${name}: ${room}, ${level}`, width, bold),
      paragraph(
        `${height} above the floor${carrier}.${fromWalls ? ` From its rim: ${lowerFirst(fromWalls)}.` : ''}${pair}`,
        width,
        style,
      ),
      ...(report ? [paragraph(`Verdict on the plan: ${headlineText(report).toLowerCase()}.`, width, style)] : []),
    ],
    0.3,
  );
}

/** Steps for detectors in sealed packs: common practice, no published source. The instructions of the kit apply too. */
function steps(plan: Plan): readonly string[] {
  const { kit, visit } = plan;
  const monitor = visit.device === 'monitor';
  return [
    'Measure the place with a tape. Do not go by the drawing alone.',
    ...(isLongTerm(plan) ? [] : ['Start only when the building has been closed for 12 hours.']),
    monitor
      ? 'Start the monitor as its instructions say.'
      : 'Open the pack as its instructions say, and write down day and time.',
    'Leave it alone. Nothing may be put on it or beside it.',
    monitor
      ? 'At the end write down day and time, and read the result.'
      : `At the end seal it at once, write down day and time, and mail it the same day: the laboratory needs it within ${labDaysAreKnown({ kit }) ? `${kit.labDays} days` : 'the days that its instructions name'}.`,
    SAFETY,
  ];
}
