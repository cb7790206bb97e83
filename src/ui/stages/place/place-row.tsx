import { listed, TONE_WORD } from '../../../../geometry/messages/index.ts';
import type { PlaceWords } from '../../../state/spots.ts';
import { VerdictMark } from '../../verdict/verdict-mark.tsx';

interface Props {
  /** Name of its mark on the sheet. */
  readonly name: string;
  readonly words: PlaceWords;
  readonly lit: boolean;
  readonly onLight: () => void;
}

/** A good place as a row: a press or the focus highlights it on the sheet. */
export function PlaceRow({ name, words, lit, onLight }: Props) {
  const { room, on, assumed, spare, tone, taken } = words;
  return (
    <button type="button" className="place" data-verdict={tone} aria-pressed={lit} onClick={onLight} onFocus={onLight}>
      <span className="place__name">{name}</span>
      <span className="place__where">
        {room}
        {on && `, ${on}`}
      </span>
      <span className="place__verdict">
        <VerdictMark verdict={tone} size={16} />
        <span>{TONE_WORD[tone]}</span>
      </span>
      <span className="place__spare">{spare}</span>
      {assumed && <span className="place__spare">{assumed}</span>}
      {taken.length > 0 && (
        <span className="place__spare">
          {listed(taken)} {taken.length > 1 ? 'stand' : 'stands'} here now
        </span>
      )}
    </button>
  );
}
