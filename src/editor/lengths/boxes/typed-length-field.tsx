import {
  type FocusEvent,
  type KeyboardEvent,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { useAppStore } from '../../../state/store.ts';
import { keepFocusOfTap } from '../../input/keep-focus.ts';
import { useSketch } from '../../overlay/sketch.ts';
import { nextFigure } from '../figures.ts';
import { closeLength, type OpenLength, openLength, stepLength, useLengths } from '../store.ts';
import { BoxActions } from './box-actions.tsx';
import { BoxField } from './box-field.tsx';
import type { BoxPlace } from './box-place.ts';
import type { ReadLength } from './read-length.ts';
import { keepTapedBy, TapedByChoice } from './taped-by-choice.tsx';
import { commitParts, partsEcho, partsRefusal, typedParts } from './typed-parts.ts';

interface Props {
  readonly open: OpenLength;
  readonly read: ReadLength;
  /** The length as it is, in words. */
  readonly shown: string;
  readonly place: BoxPlace;
  readonly box: RefObject<HTMLDivElement | null>;
  readonly field: RefObject<HTMLInputElement | null>;
  readonly onDone: () => void;
}

/** The field of a length of the plan, once it has the keyboard focus. */
export function TypedLengthField(props: Props) {
  const { open, read, shown, place, box, field } = props;
  const { text, setText, refusal, parts, apply } = useTypedText(props);
  useFirstText(props, setText);
  // A choice of another way of taping shows another length, which is selected again so that typing replaces it.
  const shownBefore = useRef(shown);
  useLayoutEffect(() => {
    if (shownBefore.current === shown) return;
    shownBefore.current = shown;
    if (text === null && document.activeElement === field.current) field.current?.select();
  }, [shown, text, field]);
  const done = () => {
    closeLength();
    props.onDone();
  };
  const cancel = () => {
    useLengths.setState({ fingerTypes: false });
    done();
  };
  const goOn = (by: 1 | -1 | 'enter') => {
    if (!apply()) return;
    // A text with several lengths may have opened a later field.
    const now = useLengths.getState().open ?? open;
    if (!openNext(now, by)) done();
  };
  const onKey = ({ key, shiftKey }: KeyboardEvent) => {
    if (key === 'Enter') goOn('enter');
    else if (key === 'Escape') cancel();
    else if (key === 'Tab' && (open.run.length > 1 || read.ends.length < 2)) goOn(shiftKey ? -1 : 1);
    else return false;
    return true;
  };
  const onLeave = (event: FocusEvent) => {
    // After Enter, Tab or Escape the field is handled already; a second commit would move the thing twice.
    if (useLengths.getState().open !== open) return;
    const within = event.relatedTarget instanceof Element && event.relatedTarget.closest('.typed-length');
    if (within) return;
    closeLength();
    // Left without typing: the next length opens no keyboard on the screen.
    if (text === null && open.at === 0) useLengths.setState({ fingerTypes: false });
    // A press elsewhere may be a mistake: only Enter, Tab and the buttons set what is typed.
    if (text !== null && text.trim() !== shown)
      useAppStore.getState().say(`${text.trim()} was not set: ${read.label} stays ${shown}.`);
  };
  const moves = read.ends.find((end) => end.moves === (open.moves ?? read.ends[0]?.moves));
  const sets = moves ? `Enter sets it: the ${moves.words.toLowerCase()} moves` : 'Enter sets it';
  const understood = text === null ? '' : partsEcho(parts);
  const echo = understood ? `${understood}. ${sets}` : sets;
  return (
    <div className="length-box typed-length" style={place} ref={box}>
      <BoxField
        label={read.label}
        field={field}
        value={text ?? shown}
        statusId={STATUS_ID}
        isInvalid={refusal !== ''}
        onType={setText}
        onKey={onKey}
        onLeave={onLeave}
      />
      {read.isBetweenWalls && <TapedByChoice onChoice={() => field.current?.focus()} />}
      <EndChoice open={open} read={read} onChoice={() => field.current?.focus()} />
      <BoxActions
        statusId={STATUS_ID}
        status={refusal || echo}
        field={field}
        onSet={() => goOn('enter')}
        {...(open.at + 1 < open.run.length ? { onNext: () => goOn(1) } : {})}
        onCancel={cancel}
      />
    </div>
  );
}

const STATUS_ID = 'typed-length-status';

/** The typed text, null while nothing is typed, and what is done with it. */
function useTypedText({ open, read, shown }: Props) {
  const unit = useAppStore((state) => state.plan.display.length);
  const [text, setText] = useState<string | null>(null);
  const [refusal, setRefusal] = useState('');
  const plan = useAppStore((state) => state.plan);
  // A refusal is removed when its cause may no longer exist: another end moves, or the plan has changed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what it hangs on
  useEffect(() => setRefusal(''), [plan, open.moves, read.label]);
  const parts = text === null ? [] : typedParts(text, open, read, unit);
  return {
    text,
    refusal,
    parts,
    setText: (typed: string) => {
      setText(typed);
      setRefusal('');
    },
    /** Edits the plan. Returns whether the length is now as typed. */
    apply: (): boolean => {
      if (text === null || text.trim() === shown) return true;
      const trouble = partsRefusal(parts) || commitParts(parts, open);
      setRefusal(trouble);
      // The field shows the refusal, so the message line does not repeat it.
      if (trouble && parts.length < 2) useAppStore.getState().say('');
      else if (read.isBetweenWalls) keepTapedBy();
      return !trouble;
    },
  };
}

/** Puts the keyboard into the field, with the digit that opened it or with its text selected. */
function useFirstText({ open: { first }, field }: Props, setText: (text: string) => void): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the field opens, or with another first digit
  useLayoutEffect(() => {
    const input = field.current;
    if (!input) return undefined;
    if (first !== null) setText(first);
    input.focus({ preventScroll: true });
    if (first === null) input.select();
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, [first]);
}

/** Opens the length after or before this one. Returns false if there is none. */
function openNext(open: OpenLength, by: 1 | -1 | 'enter'): boolean {
  const isAsked = by !== 'enter' || open.at + 1 < open.asked;
  if (isAsked && stepLength(by === 'enter' ? 1 : by)) return true;
  const next = by === 'enter' || open.run.length > 1 ? null : nextFigure(by);
  if (next) openLength(next, true);
  return next !== null;
}

/** The choice of the end that moves, if either can. */
function EndChoice({ open, read, onChoice }: Pick<Props, 'open' | 'read'> & { readonly onChoice: () => void }) {
  if (read.ends.length < 2) return null;
  const moves = open.moves ?? read.ends[0]?.moves;
  return (
    <fieldset className="box-choice">
      <legend>Which one moves</legend>
      {read.ends.map((end) => (
        <button
          key={end.moves}
          type="button"
          className="button"
          aria-pressed={end.moves === moves}
          onClick={() => {
            useLengths.setState({ open: { ...open, moves: end.moves, typing: true } });
            onChoice();
          }}
        >
          {end.words}
        </button>
      ))}
    </fieldset>
  );
}
