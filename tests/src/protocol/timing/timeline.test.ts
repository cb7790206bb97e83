import { describe, expect, it } from 'vitest';
import { timelineOf } from '../../../../src/protocol/timing/timeline.ts';
import { at, planWith } from '../../../helpers/timing.ts';

describe('the visit as bars', () => {
  it('shows the house closed no longer than it was', () => {
    const visit = { closedSince: at('3-2 6:00'), start: at('3-2 18:00'), end: at('3-5 18:00') };
    const closedTo = (opened: string | null) =>
      timelineOf(planWith({ ...visit, closedUntil: opened }))?.bars.find(({ name }) => name === 'House closed')?.to;
    expect(closedTo(at('3-4 12:00'))).toBe(Date.parse(at('3-4 12:00')));
    expect(closedTo(at('3-6 12:00'))).toBe(Date.parse(at('3-5 18:00')));
    expect(closedTo(null)).toBe(Date.parse(at('3-5 18:00')));
  });
});
