import { describe, expect, it } from 'vitest';
import { readOverlay } from '../../../../src/editor/overlay/overlay-inputs.ts';
import { NO_DOUBTS } from '../../../../src/state/second-opinion.ts';
import { useAppStore } from '../../../../src/state/store.ts';

describe('the overlay is painted again when a verdict changes without the plan', () => {
  const changes = (act: () => void) => {
    const before = readOverlay();
    act();
    return readOverlay().some((input, i) => input !== before[i]);
  };
  const { sunChanged, setSecond, plan } = useAppStore.getState();

  it('not for nothing', () => expect(changes(() => undefined)).toBe(false));
  it('direct sun is worked out', () => expect(changes(sunChanged)).toBe(true));
  it('the second computation does not agree', () =>
    expect(changes(() => setSecond({ plan, computed: new Map(), doubts: new Map(NO_DOUBTS) }))).toBe(true));
});
