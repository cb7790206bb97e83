import { drawAgreement } from './agreement.ts';
import type { DocumentOrder } from './document-blocks.ts';
import { drawDoorHanger } from './door-hanger.ts';
import { drawEntranceNotice } from './entrance-notice.ts';
import { drawLog } from './log.ts';
import { drawNotice } from './notice.ts';
import { drawPlacementCard } from './placement-card.ts';
import { drawTestReport } from './test-report.ts';

export type VisitDocument =
  | 'notice'
  | 'entrance-notice'
  | 'door-hanger'
  | 'agreement'
  | 'placement-card'
  | 'log'
  | 'report';

const DRAWN: Readonly<Record<VisitDocument, (order: DocumentOrder) => readonly string[]>> = {
  notice: drawNotice,
  'entrance-notice': drawEntranceNotice,
  'door-hanger': drawDoorHanger,
  agreement: drawAgreement,
  'placement-card': drawPlacementCard,
  log: drawLog,
  report: drawTestReport,
};

/** Returns the pages of one document as SVG. Pure: the same order gives the same text. */
export function drawDocument(which: VisitDocument, order: DocumentOrder): readonly string[] {
  return DRAWN[which](order);
}
