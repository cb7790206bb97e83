import { drawAgreement } from './agreement.ts';
import type { DocumentOrder } from './document-blocks.ts';
import { drawDoorHanger } from './door-hanger.ts';
import { drawLog } from './log.ts';
import { drawNotice } from './notice.ts';

export type VisitDocument = 'notice' | 'door-hanger' | 'agreement' | 'log';

const DRAWN: Readonly<Record<VisitDocument, (order: DocumentOrder) => readonly string[]>> = {
  notice: drawNotice,
  'door-hanger': drawDoorHanger,
  agreement: drawAgreement,
  log: drawLog,
};

/** Returns the pages of one document as SVG. Pure: the same plan and date give the same text. */
export function drawDocument(which: VisitDocument, order: DocumentOrder): readonly string[] {
  return DRAWN[which](order);
}
