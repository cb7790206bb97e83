import { SQUARES } from '../../quick-card/answers.ts';
import { sideOfSquare } from '../../quick-card/room-plan.ts';
import { squareWords } from '../../quick-card/square-words.ts';

interface RoomPictureProps {
  readonly label: string;
  /** Whether a square can be pressed now. */
  readonly isOpen: (square: string) => boolean;
  /** What stands at a square, in short words; empty for nothing. */
  readonly nameAt: (square: string) => string;
  /** Whether the thing that is set down now is at this square. */
  readonly isChosen: (square: string) => boolean;
  readonly onPress: (square: string) => void;
}

const STEPS = Array.from({ length: SQUARES + 2 }, (_, k) => k - 1);
const ALL = STEPS.flatMap((y) => STEPS.map((x) => `${x},${y}`));

/** The room in squares with its walls around it, to press where something is. */
export function RoomPicture({ label, isOpen, nameAt, isChosen, onPress }: RoomPictureProps) {
  return (
    <fieldset className="squares">
      <legend className="unseen">{label}</legend>
      {ALL.map((square) => {
        const side = sideOfSquare(square);
        const isCorner = !side && !isFloor(square);
        if (isCorner) return <span key={square} className="square square--corner" />;
        const name = nameAt(square);
        return (
          <button
            key={square}
            type="button"
            className="square"
            data-side={side ?? undefined}
            data-taken={name !== '' || undefined}
            aria-pressed={isChosen(square)}
            aria-label={`${squareWords(square)}${name ? `: ${name}` : ''}`}
            disabled={!isOpen(square)}
            onClick={() => onPress(square)}
          >
            {name}
          </button>
        );
      })}
    </fieldset>
  );
}

const isFloor = (square: string): boolean => square.split(',').every((k) => Number(k) >= 0 && Number(k) < SQUARES);
