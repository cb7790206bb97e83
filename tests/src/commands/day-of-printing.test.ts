/** A paper has the day of printing at the site: common practice, no published source. Times on it are by the clock of the site too. */
import { afterEach, expect, it, vi } from 'vitest';
import { today } from '../../../src/commands/sheet-files.ts';
import { samplePlan } from '../../helpers/sample-files.ts';

afterEach(() => void vi.useRealTimers());

it.each([
  ['Pacific/Auckland', '2026-11-30T22:40:00Z', '2026-12-01'],
  ['America/Chicago', '2026-12-01T02:00:00Z', '2026-11-30'],
  ['America/Chicago', '2026-12-01T06:00:00Z', '2026-12-01'],
  ['Asia/Kolkata', '2026-11-30T18:29:59Z', '2026-11-30'],
  ['Asia/Kolkata', '2026-11-30T18:30:00Z', '2026-12-01'],
])('in %s at %s: %s', (timeZone, now, day) => {
  const plan = samplePlan('06-sale-report');
  vi.useFakeTimers({ now: new Date(now) });
  expect(today({ ...plan, site: { ...plan.site, timeZone } })).toBe(day);
});
