/** Chain of custody of the detectors, and quality of the measurement. */
import { counted } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { isSentToLaboratory, logEntryOf } from '../../protocol/custody/log-entries.ts';
import { qualityBook } from '../../protocol/quality/quality-book.ts';
import { locations } from '../../protocol/results/locations.ts';
import type { FlowItem } from '../flow.ts';
import { type Column, headingItem, tableItems, textItems } from '../table.ts';
import { placedDetectors } from './detector-places.ts';
import { clipped } from './document-blocks.ts';
import { formatShortAt } from './format-times.ts';
import { CUSTODY_COLUMNS, clippedInReport, handOvers } from './log-rows.ts';
import { BODY, NOT_KNOWN, section, TABLE } from './report-parts.ts';

const HANDLING_COLUMNS: readonly Column[] = [
  { heading: 'Detector', share: 0.14 },
  { heading: 'Placed by', share: 0.18 },
  { heading: 'Picked up by', share: 0.18 },
  { heading: 'Sealed', share: 0.18 },
  { heading: 'Evidence of tampering', share: 0.14 },
  { heading: 'Note', share: 0.18 },
];

/** Returns who placed and picked up each detector, whether it was tampered with, and every hand-over. */
export function custodyItems(plan: Plan, width: number): readonly FlowItem[] {
  const placed = placedDetectors(plan);
  if (placed.length === 0) return [];
  const steps = handOvers(plan);
  const none = isSentToLaboratory(plan)
    ? 'No transfer is on record.'
    : 'Read on site: no detector was given to anybody.';
  return [
    headingItem('Chain of custody', width),
    ...tableItems(
      HANDLING_COLUMNS,
      placed.map(({ detector: { id }, name }) => handlingRow(plan, id, name)),
      width,
      TABLE,
    ),
    ...(steps.length > 0 ? below(tableItems(CUSTODY_COLUMNS, steps, width, TABLE)) : textItems(none, width, BODY)),
    ...section('Written out', clippedInReport(plan), width),
  ];
}

/** The table with space above it, so that it is not read as part of the table before. */
function below([first, ...rest]: readonly FlowItem[]): readonly FlowItem[] {
  return first ? [{ ...first, above: 3 }, ...rest] : [];
}

function handlingRow(plan: Plan, id: string, name: string) {
  const { placedBy, fetchedBy, sealed, tampering, note } = logEntryOf(plan, id);
  const known = (text: string) => (text.trim() ? clipped(text.trim()) : NOT_KNOWN);
  const tampered = { none: 'None found', seen: { text: 'FOUND', bold: true }, unknown: NOT_KNOWN }[tampering];
  return [
    { text: clipped(name), bold: true },
    known(placedBy),
    known(fetchedBy),
    isSentToLaboratory(plan) ? known(formatShortAt(sealed, plan)) : 'Not applicable',
    tampered,
    clipped(note.trim()),
  ];
}

function pairsInWords(isPlaced: boolean, compared: number): string {
  if (compared > 0)
    return `${counted(compared, 'collocated pair')} in this test: how the two results agree stands with the results.`;
  return isPlaced
    ? 'Collocated detectors, and no two results of them to compare: nothing shows how well they agree.'
    : 'No collocated pair in this test: nothing shows how well two detectors agree.';
}

/** Returns what the pairs, blanks and spikes of this test show about the quality of the measurement, and what is missing. */
export function qualityItems(plan: Plan, width: number): readonly FlowItem[] {
  const { pairs, checks } = qualityBook([plan]);
  const isPlaced = locations(plan).some(({ detectors }) => detectors.length > 1);
  const count = (kind: 'blank' | 'spike') => checks.filter(({ check }) => check.kind === kind).length;
  return section(
    'Quality of the measurement',
    [
      pairsInWords(isPlaced, pairs.length),
      `On record with this test: ${counted(count('blank'), 'blank')}, ${counted(count('spike'), 'spike')}.`,
      "The firm's checks over many tests, by month and on control charts, are not part of this report.",
    ],
    width,
  );
}
