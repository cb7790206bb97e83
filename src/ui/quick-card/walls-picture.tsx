import type { Side } from '../../../geometry/dimension/wall-gaps.ts';
import { capital } from '../../../geometry/messages/index.ts';
import { WALL_WORDS } from '../../quick-card/square-words.ts';
import { answer, useQuickCard } from './quick-card-store.ts';
import './walls-picture.css';

const ORDER = ['up', 'left', 'right', 'down'] as const satisfies readonly Side[];

/** The four walls around the room: each counts as outside until it is pressed. */
export function WallsPicture() {
  const inside = useQuickCard(({ answers }) => answers.inside);
  const toggle = (side: Side) =>
    answer({ inside: inside.includes(side) ? inside.filter((each) => each !== side) : [...inside, side] });
  return (
    <fieldset className="quick__choices">
      <legend className="field__label">Which walls have another room of the house behind them? Press those.</legend>
      <div className="walls">
        {ORDER.map((side) => (
          <button
            key={side}
            type="button"
            className="walls__wall"
            data-side={side}
            aria-pressed={inside.includes(side)}
            onClick={() => toggle(side)}
          >
            <span>
              {side === 'down' ? 'You come in here' : capital(WALL_WORDS[side])}:{' '}
              <strong>{inside.includes(side) ? 'a room behind' : 'outside'}</strong>
            </span>
          </button>
        ))}
        <span className="walls__floor soft" aria-hidden="true">
          The room
        </span>
      </div>
      <p className="small soft">What is not pressed counts as an exterior wall: air or soil behind it.</p>
    </fieldset>
  );
}
