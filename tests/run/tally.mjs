// Tallies of passed, failed and skipped checks.
import { existsSync, readFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Tally */

/** @type {Tally} */
export const PASSED = { passed: 1, failed: 0, skipped: 0 };
/** @type {Tally} */
export const FAILED = { passed: 0, failed: 1, skipped: 0 };

/**
 * Returns the tally of a vitest run from its JSON report. A run without a report, without a test, or with a failure outside its tests
 * counts as one failure, so that it is never a pass.
 * @returns {Tally}
 */
export function tallyOf(/** @type {boolean} */ exitedWell, /** @type {string} */ reportFile) {
  if (!existsSync(reportFile)) return FAILED;
  const report = JSON.parse(readFileSync(reportFile, 'utf8'));
  const failed = report.numFailedTests;
  const ranNone = report.numTotalTests === 0;
  return {
    passed: report.numPassedTests,
    failed: failed === 0 && (!exitedWell || !report.success || ranNone) ? 1 : failed,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/** @returns {Tally} */
export function sum(/** @type {readonly Tally[]} */ tallies) {
  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const tally of tallies) {
    total.passed += tally.passed;
    total.failed += tally.failed;
    total.skipped += tally.skipped;
  }
  return total;
}

export const inWords = (/** @type {Tally} */ { passed, failed, skipped }) =>
  `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
