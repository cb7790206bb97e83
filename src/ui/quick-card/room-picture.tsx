import { type KeyboardEvent, useState } from 'react';
import type { XY } from '../../../geometry/plan/model.ts';
import { SQUARES } from '../../quick-card/answers.ts';
import { sideOfSquare, squareAt } from '../../quick-card/room-plan.ts';
import { squareWords } from '../../quick-card/square-words.ts';
import './room-picture.css';

interface RoomPictureProps {
  readonly label: string;
  /** Whether a square can be pressed now. */
  readonly isOpen: (square: string) => boolean;
  /** Returns a short name of the thing at a square; empty for none. */
  readonly nameAt: (square: string) => string;
  /** Whether a thing of the chosen kind is at this square. */
  readonly isChosen: (square: string) => boolean;
  readonly onPress: (square: string) => void;
}

const STEPS = Array.from({ length: SQUARES + 2 }, (_, k) => k - 1);
const ALL = STEPS.flatMap((y) => STEPS.map((x) => `${x},${y}`));

/** The room and its walls in squares that are pressed to place things. Tab stops at one square; arrows move to the others. */
export function RoomPicture({ label, isOpen, nameAt, isChosen, onPress }: RoomPictureProps) {
  const [last, setLast] = useState('');
  const open = ALL.filter((square) => isSquare(square) && isOpen(square));
  const stop = open.includes(last) ? last : (open.find(isChosen) ?? open[0]);
  const walk = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    const next = event.altKey || event.ctrlKey || event.metaKey ? null : neighbor(stop, event.key, open);
    if (!next) return;
    event.preventDefault();
    setLast(next);
    event.currentTarget.querySelector<HTMLElement>(`[data-square="${next}"]`)?.focus();
  };
  return (
    <fieldset className="squares" onKeyDown={walk}>
      <legend className="unseen">{label}</legend>
      {ALL.map((square) => {
        const side = sideOfSquare(square);
        if (!isSquare(square)) return <span key={square} className="square square--corner" />;
        const name = nameAt(square);
        return (
          <button
            key={square}
            type="button"
            className="square"
            data-square={square}
            data-side={side ?? undefined}
            data-taken={name !== '' || undefined}
            aria-pressed={isChosen(square)}
            aria-label={`${squareWords(square)}${name ? `: ${name}` : ''}`}
            disabled={!isOpen(square)}
            tabIndex={square === stop ? 0 : -1}
            onFocus={() => setLast(square)}
            onClick={() => onPress(square)}
          >
            {name}
          </button>
        );
      })}
    </fieldset>
  );
}

const WAYS: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Returns the next open square in the direction of an arrow key, straight ahead if there is one; null for none and for other keys. */
function neighbor(from: string | undefined, key: string, open: readonly string[]): string | null {
  const way = WAYS[key];
  if (!way || from === undefined) return null;
  const [x, y] = squareAt(from);
  const ahead = open.flatMap((square) => {
    const [dx, dy] = [squareAt(square)[0] - x, squareAt(square)[1] - y];
    const on = dx * way[0] + dy * way[1];
    const aside = Math.abs(dx * way[1]) + Math.abs(dy * way[0]);
    return on > 0 ? [{ square, cost: on + aside + (aside > 0 ? STEPS.length : 0) }] : [];
  });
  return ahead.sort((a, b) => a.cost - b.cost)[0]?.square ?? null;
}

/** Whether it is a square of the floor or of a wall, and not a corner. */
const isSquare = (square: string): boolean => sideOfSquare(square) !== null || isFloor(square);

const isFloor = (square: string): boolean => square.split(',').every((k) => Number(k) >= 0 && Number(k) < SQUARES);
