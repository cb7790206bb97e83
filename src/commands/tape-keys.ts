import { isTyping } from '../editor/input/typing.ts';
import { type BurstEnd, KeyBurst, type KeyUse, type TapeKey } from '../editor/tape/key-burst.ts';
import { lengthInputAt, nextLengthInput, typeInto } from '../editor/tape/length-input.ts';
import { dropReading, useTape } from '../editor/tape/tape-store.ts';
import { isTapeUnit, readTapeText, withTapeUnit } from '../editor/tape/tape-text.ts';
import { useAppStore } from '../state/store.ts';
import { readSetting } from '../storage/settings.ts';
import { modesAt } from './modes.ts';

/** A key press that is held back, and dispatched again if it was typed by hand. */
interface HeldKey extends TapeKey {
  readonly event: KeyboardEvent;
}

/**
 * Listens to a laser tape that types like a keyboard: its text is never a shortcut, and is entered as the length that is asked for. Never
 * stops, because it is started once for the life of the page.
 */
export async function startTapeKeys(): Promise<void> {
  const again = new WeakSet<Event>();
  const burst = new KeyBurst<HeldKey>({
    replay: (keys) => {
      for (const { event } of keys) {
        const copy = new KeyboardEvent(event.type, event);
        again.add(copy);
        event.target?.dispatchEvent(copy);
      }
    },
    typed: takeTyped,
    gap: () => useTape.getState().gap,
    after: (ms, call) => {
      const timer = setTimeout(call, ms);
      return () => clearTimeout(timer);
    },
    hasMore: () => 'scheduling' in navigator && (navigator.scheduling as Scheduling).isInputPending(),
  });
  window.addEventListener(
    'keydown',
    (event) => {
      if (again.has(event) || event.isComposing || event.repeat) return;
      if (!burst.press({ key: event.key, at: event.timeStamp, event }, keysGoTo(event))) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
  const unit = await readSetting('tape-unit');
  useTape.setState({ ready: true, ...(isTapeUnit(unit) ? { unit } : {}) });
}

/** https://wicg.github.io/is-input-pending/ */
interface Scheduling {
  isInputPending(): boolean;
}

function keysGoTo({ target, ctrlKey, altKey, metaKey }: KeyboardEvent): KeyUse {
  if (ctrlKey || altKey || metaKey) return 'other';
  if (lengthInputAt(target)) return 'length';
  const modes = modesAt(target);
  if (isTyping(target) || modes.includes('dialog') || modes.includes('menu')) return 'other';
  // In these modes the first digit opens a field, which receives the others.
  return modes.includes('length') || modes.includes('drawing') ? 'length' : 'shortcuts';
}

/** A number without a unit that is rarely typed by hand: with three decimals, or in mm. */
const LIKE_A_TAPE = /[.,]\d{3}|\d{4}/;

/** Uses a text that a tape typed. Returns whether its last key is consumed, so that no other listener receives it. */
function takeTyped(typed: string, end: BurstEnd, use: 'shortcuts' | 'length'): boolean {
  const reading = readTapeText(typed, useTape.getState().unit, useAppStore.getState().plan.display.length);
  const field = use === 'length' ? lengthInputAt(document.activeElement) : null;
  if (!field) {
    useTape.setState({ reading });
    return end !== null;
  }
  if (reading.kind === 'bare') {
    // The field reads it like a number typed by hand, in its own unit, and the line over the sheet asks for the tape's unit.
    if (LIKE_A_TAPE.test(typed)) useTape.setState({ reading: { ...reading, isTaken: true } });
    return false;
  }
  dropReading();
  const text = withTapeUnit(field.value, typed, reading);
  if (text !== null) typeInto(field, text);
  // On the sheet Enter already leads to the next length that is asked for.
  if (end === 'Enter' && !field.closest('.length-box')) setTimeout(() => nextLengthInput(field)?.focus());
  return false;
}
