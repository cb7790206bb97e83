import { openChecks } from '../../../geometry/check/looked-for.ts';
import { capital, listed } from '../../../geometry/messages/index.ts';
import { detectorName, type Hint, type SeenLevel, WEIGHT } from './hint.ts';

/** Returns hints about statements of the plan sheet that speak against the test. */
export function sheetHints(levels: readonly SeenLevel[]): readonly Hint[] {
  const weight = WEIGHT.sheet;
  if (levels.every(({ model }) => model.level.detectors.length === 0)) {
    return [{ text: 'A plan sheet without a detector shows the drawing alone.', action: null, missing: true, weight }];
  }
  const refused = levels.flatMap(({ model, reports }) =>
    reports
      .filter(({ verdict }) => verdict === 'blocked' || verdict === 'unknown')
      .map(({ id, verdict }) => `${detectorName(model.level.detectors, id)} is ${verdict}`),
  );
  if (refused.length > 0) {
    return [
      { text: `${capital(listed(refused))}. The plan sheet will state it.`, action: null, missing: true, weight },
    ];
  }
  const open = levels.flatMap(({ model, reports }) =>
    reports.filter((report) => openChecks(report).length > 0).map(({ id }) => detectorName(model.level.detectors, id)),
  );
  if (open.length === 0) return [];
  const text = `For ${listed(open)} something was not looked for or not run. The plan sheet will state it.`;
  return [{ text, action: null, missing: false, weight }];
}
