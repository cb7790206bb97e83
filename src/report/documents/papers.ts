import { drawAgreement } from './agreement.ts';
import { drawDoorHanger } from './door-hanger.ts';
import { drawLog } from './log.ts';
import { drawNotice } from './notice.ts';
import type { PaperOrder } from './parts.ts';

export type JobPaper = 'notice' | 'door-hanger' | 'agreement' | 'log';

const DRAWN: Readonly<Record<JobPaper, (order: PaperOrder) => readonly string[]>> = {
  notice: drawNotice,
  'door-hanger': drawDoorHanger,
  agreement: drawAgreement,
  log: drawLog,
};

/** The pages of one paper of the job as SVG documents. Pure: the same plan and date give the same text. */
export function drawJobPaper(which: JobPaper, order: PaperOrder): readonly string[] {
  return DRAWN[which](order);
}
