import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BurstEnd, KeyBurst, type KeyUse } from '../../../../src/editor/tape/key-burst.ts';
import { BURST_GAP_MS } from '../../../../src/editor/tape/tape-store.ts';
import { TAPE_FORMS } from './forms.ts';

/** A burst reader with a clock of its own, and what it told. */
function reader() {
  const replayed: string[] = [];
  const typed: { text: string; end: BurstEnd }[] = [];
  let waiting: (() => void) | null = null;
  const burst = new KeyBurst({
    replay: (keys) => replayed.push(...keys.map(({ key }) => key)),
    typed: (text, end) => {
      typed.push({ text, end });
      return false;
    },
    gap: () => BURST_GAP_MS,
    after: (_, call) => {
      waiting = call;
      return () => {
        waiting = null;
      };
    },
    hasMore: () => false,
  });
  let at = 1000;
  return {
    replayed,
    typed,
    /** Presses keys one after another; returns those that others may have. */
    press: (keys: readonly string[], every: number, use: KeyUse) =>
      keys.filter((key) => {
        at += every;
        return !burst.press({ key, at }, use);
      }),
    pause: () => {
      const call = waiting;
      waiting = null;
      at += BURST_GAP_MS;
      call?.();
    },
  };
}

/** Marks are made with Shift on a US keyboard. */
const keysOf = (text: string) => [...text].flatMap((key) => (key === '"' ? ['Shift', key] : [key]));

describe('a laser tape, where keys are shortcuts', () => {
  const cases = TAPE_FORMS.flatMap(([text]) => [1, 12, 30].map((every) => [text, every] as const));
  it.each(cases)('%s, a key each %i ms: no key gets through', (text, every) => {
    const { press, typed, replayed } = reader();
    expect(press([...keysOf(text), 'Enter'], every, 'shortcuts')).toEqual([]);
    expect(typed).toEqual([{ text, end: 'Enter' }]);
    expect(replayed).toEqual([]);
  });

  it('that types no Enter is heard at the pause', () => {
    const { press, pause, typed } = reader();
    press([...'3.812'], 10, 'shortcuts');
    pause();
    expect(typed).toEqual([{ text: '3.812', end: null }]);
  });

  it('that types Tab at the end', () => {
    const { press, typed } = reader();
    expect(press([...'7m', 'Tab'], 10, 'shortcuts')).toEqual([]);
    expect(typed).toEqual([{ text: '7m', end: 'Tab' }]);
  });
});

describe('a hand, where keys are shortcuts', () => {
  it('presses two digits: both get through, met, once it is clear', () => {
    const { press, pause, replayed, typed } = reader();
    press(['3'], 0, 'shortcuts');
    pause();
    press(['1'], 120, 'shortcuts');
    pause();
    expect(replayed).toEqual(['3', '1']);
    expect(typed).toEqual([]);
  });

  it('rolls over two digits: still no tape', () => {
    const { press, pause, replayed, typed } = reader();
    press(['3', '1'], 20, 'shortcuts');
    pause();
    expect(replayed).toEqual(['3', '1']);
    expect(typed).toEqual([]);
  });

  it('presses a digit and another key: the digit comes first, the key is never held back', () => {
    const { press, replayed } = reader();
    expect(press(['4', 'x'], 90, 'shortcuts')).toEqual(['x']);
    expect(replayed).toEqual(['4']);
  });

  it('presses letters, arrows and Enter: they are never held back', () => {
    const { press } = reader();
    const keys = ['w', 'ArrowLeft', 'Enter', ' ', 'Escape', 'Shift', 'Tab'];
    expect(press(keys, 5, 'shortcuts')).toEqual(keys);
  });

  it('slower than the gap, nothing is lost, whatever is pressed', () => {
    const key = fc.constantFrom('1', '7', '.', 'c', "'", '/', 'Enter', 'Tab', 'Shift', 'ArrowUp', ' ');
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), fc.integer({ min: BURST_GAP_MS + 1, max: 500 }), (keys, every) => {
        const { press, pause, replayed, typed } = reader();
        const got: string[] = [];
        for (const one of keys) {
          got.push(...press([one], every, 'shortcuts'));
          pause();
          got.push(...replayed.splice(0));
        }
        expect(got).toEqual(keys);
        expect(typed).toEqual([]);
      }),
    );
  });
});

describe('keys that go into a field for a length', () => {
  it.each(TAPE_FORMS)('%s: each key gets through, and the text is told before Enter', (text) => {
    const { press, typed } = reader();
    expect(press([...text, 'Enter'], 10, 'length')).toEqual([...text, 'Enter']);
    expect(typed).toEqual([{ text, end: 'Enter' }]);
  });

  it('typed by hand are not answered', () => {
    const { press, pause, typed } = reader();
    press([...'12 6', 'Enter'], 80, 'length');
    pause();
    expect(typed).toEqual([]);
  });

  it('of another field are nobody else’s business', () => {
    const { press, typed } = reader();
    expect(press([...'2026', 'Enter'], 5, 'other')).toEqual([...'2026', 'Enter']);
    expect(typed).toEqual([]);
  });
});
