/** The lines that are measured on paper from the detectors to what is tightest. */
import { checksInOrder } from '../../geometry/messages/index.ts';
import type { MeasuredLine } from '../drawing/labels/measured.ts';
import { measureWords } from '../drawing/words.ts';
import type { SubjectMatter } from './subject-matter.ts';

/** With more detectors than this, only what is not met is measured on the drawing. */
const FEW = 12;
/** Where all is met, a distance is shown that is at most this many times what is needed, and the tightest in any case. */
const NEAR = 2;

/** Every distance that is not met or tight, else what is near its limit; of a pair, the same subject once. */
export function measuredLines({ plan, detectors }: SubjectMatter): readonly MeasuredLine[] {
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
    return (troubled.length > 0 ? troubled : rest).flatMap((check): readonly MeasuredLine[] => {
      const key = `${detector.pair ?? detector.id} ${check.subject} ${check.reason}`;
      if (seen.has(key) || !check.witness) return [];
      seen.add(key);
      return [{ from: check.witness.rim, to: check.witness.subject, words: measureWords(check, plan) }];
    });
  });
}
