/** Invented jobs for the tests of the papers, from nothing known to everything on record, and how they are drawn. */
import type { Plan } from '../../../../geometry/plan/model.ts';
import { withAgreement } from '../../../../src/protocol/conditions/agreement.ts';
import { withCondition } from '../../../../src/protocol/conditions/edit-conditions.ts';
import { withHandOver, withLogEntry, withWeatherNote } from '../../../../src/protocol/custody/log-entries.ts';
import { drawDocument, type VisitDocument } from '../../../../src/report/documents/draw-document.ts';
import type { PaperName } from '../../../../src/report/paper.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';
import { sheetTexts } from '../../../helpers/sheet-texts.ts';

const KINDS: readonly VisitDocument[] = [
  'notice',
  'entrance-notice',
  'door-hanger',
  'agreement',
  'placement-card',
  'log',
  'report',
];
export const PAPERS: readonly PaperName[] = ['letter', 'a4'];
export const BOTH = KINDS.flatMap((kind) => PAPERS.map((paper) => [kind, paper] as const));

export const bare = samplePlan('01-plain-basement');
const zone = { site: { ...bare.site, timeZone: 'America/New_York' } };
export const timed: Plan = {
  ...bare,
  ...zone,
  visit: { ...bare.visit, closedSince: null, start: '2026-03-07T18:00:00-05:00', end: null },
};
export const detector = timed.levels.flatMap(({ detectors }) => detectors)[0]?.id ?? '';

/** A job with everything on record, in the longest texts that somebody could paste. */
export function filled(long: string): Plan {
  const visited = { ...timed, visit: { ...timed.visit, end: '2026-03-10T19:00:00-04:00' } };
  const logged = withLogEntry(visited, detector, {
    serial: long,
    placedBy: long,
    fetchedBy: long,
    tampering: 'seen',
    note: long,
    sealed: '2026-03-10T19:05:00-04:00',
  });
  const handed = withHandOver(logged, detector, { at: '2026-03-10T20:00:00-04:00', from: long, to: long, note: long });
  const broken = withCondition(handed, 'windows-closed', { state: 'broken', by: long, note: long });
  return withAgreement(withWeatherNote(broken, { at: null, text: long }), {
    signedBy: long,
    refused: true,
    note: long,
  });
}

/** So many photos of each detector. */
export function withPhotos(plan: Plan, detectors: readonly { readonly id: string }[], count: number): Plan {
  const photos = Array<string>(count % 5).fill('data:image/png;base64,AAAA');
  return detectors.reduce((known, { id }) => withLogEntry(known, id, { photos }), plan);
}

export const draw = (which: VisitDocument, plan: Plan, paper: PaperName = 'letter') =>
  drawDocument(which, { plan, paper, date: '2026-03-05' });
/** All words of all pages in one line. */
export const words = (which: VisitDocument, plan: Plan) =>
  draw(which, plan)
    .flatMap((svg) => sheetTexts(svg).map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');
