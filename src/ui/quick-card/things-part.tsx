import { useLayoutEffect, useRef, useState } from 'react';
import { listed } from '../../../geometry/messages/index.ts';
import {
  type CardAnswers,
  FAR,
  GROUP_IDS,
  type GroupId,
  THING_KINDS,
  type ThingKind,
} from '../../quick-card/answers.ts';
import { groupsDrawn, isPlace } from '../../quick-card/room-plan.ts';
import { GROUPS, THINGS } from '../../quick-card/things.ts';
import { answer, useQuickCard } from './quick-card-store.ts';
import { RoomPicture } from './room-picture.tsx';

/** Asks what is in the room and behind its walls, by pressing squares of a picture of the room. */
export function ThingsPart() {
  const answers = useQuickCard((state) => state.answers);
  const [kind, setKind] = useState(firstKind);
  const { hold, picture } = useHeldInPlace(kind);
  const isAt = (square: string) => answers.things.some((thing) => thing.kind === kind && thing.square === square);
  const toggle = (square: string) => {
    const others = answers.things.filter((thing) => thing.kind !== kind || thing.square !== square);
    const { group } = THINGS[kind];
    answer({
      things: isAt(square) ? others : [...others, { kind, square }],
      none: answers.none.filter((each) => each !== group),
    });
  };
  const namesAt = (square: string) =>
    answers.things.filter((thing) => thing.square === square && isPlace(thing)).map((thing) => THINGS[thing.kind].name);
  return (
    <section className="quick__part" aria-labelledby="quick-things">
      <h3 id="quick-things">3. What is in it</h3>
      <p>
        Choose what it is, then press every square that it touches. A square beyond a dark edge is a wall, or what is
        behind it. A wall with a window counts as an exterior wall. Look on this whole floor of the house before you say
        that there is none.
      </p>
      {GROUP_IDS.map((group) => (
        <div key={group} id={`quick-${group}`} className="quick__group">
          <GroupRow
            group={group}
            answers={answers}
            kind={kind}
            onKind={(next, from) => {
              hold(from);
              setKind(next);
            }}
          />
          {group === THINGS[kind].group && (
            <div className="quick__where" ref={picture}>
              <p>{THINGS[kind].words}: press every square that it touches.</p>
              <RoomPicture
                label={`Where is it: ${THINGS[kind].words.toLowerCase()}`}
                isOpen={(square) => isPlace({ kind, square })}
                nameAt={(square) => namesAt(square).join(' ')}
                isChosen={isAt}
                onPress={toggle}
              />
              <p>
                <button type="button" className="button" aria-pressed={isAt(FAR)} onClick={() => toggle(FAR)}>
                  {THINGS[kind].name}: on this floor, 10 ft (3 m) or more from this room
                </button>
              </p>
            </div>
          )}
        </div>
      ))}
      <NoneOfTheRest answers={answers} />
    </section>
  );
}

/** Returns the kind that is chosen first: one of the group that the user was led to, else windows. */
function firstKind(): ThingKind {
  const { goTo } = useQuickCard.getState();
  return THING_KINDS.find((kind) => THINGS[kind].group === goTo) ?? 'window';
}

/**
 * Keeps the pressed button under the finger when the picture, which is below the chosen kind, moves from above it. The page scrolls only as
 * far as needed to show the picture.
 */
function useHeldInPlace(kind: ThingKind) {
  const picture = useRef<HTMLDivElement>(null);
  const held = useRef<{ readonly button: HTMLElement; readonly top: number } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another kind is chosen
  useLayoutEffect(() => {
    if (!held.current) return;
    const { button, top } = held.current;
    held.current = null;
    const moved = button.getBoundingClientRect().top - top;
    button.closest('dialog')?.scrollBy({ top: moved, behavior: 'instant' });
    picture.current?.querySelector('.squares')?.scrollIntoView({ block: 'nearest', behavior: 'instant' });
    // On a low screen the button has priority over the last row of squares.
    button.scrollIntoView({ block: 'nearest', behavior: 'instant' });
  }, [kind]);
  return {
    picture,
    /** Call it before this button chooses another kind. */
    hold: (button: HTMLElement) => {
      held.current = { button, top: button.getBoundingClientRect().top };
    },
  };
}

interface GroupRowProps {
  readonly group: GroupId;
  readonly answers: CardAnswers;
  readonly kind: ThingKind;
  readonly onKind: (kind: ThingKind, from: HTMLElement) => void;
}

/** A group of kinds: one button says that there is none, the others choose the kind to place in the picture. */
function GroupRow({ group, answers, kind, onKind }: GroupRowProps) {
  const { asks, words } = GROUPS[group];
  const isDrawn = groupsDrawn(answers).has(group);
  const isNone = answers.none.includes(group) && !isDrawn;
  const toggleNone = () =>
    answer({
      none: isNone ? answers.none.filter((each) => each !== group) : [...answers.none, group],
      things: isNone ? answers.things : answers.things.filter((thing) => THINGS[thing.kind].group !== group),
    });
  return (
    <fieldset className="quick__choices">
      <legend className="field__label">
        {asks}: <strong>{stateWords(isDrawn, isNone)}</strong>
      </legend>
      <div className="buttons">
        {THING_KINDS.filter((each) => THINGS[each].group === group).map((each) => (
          <button
            key={each}
            type="button"
            className="button"
            aria-pressed={each === kind}
            onClick={(event) => onKind(each, event.currentTarget)}
          >
            {THINGS[each].words}
          </button>
        ))}
        <button type="button" className="button" aria-pressed={isNone} onClick={toggleNone}>
          No {words} on this floor
        </button>
      </div>
    </fieldset>
  );
}

function stateWords(isDrawn: boolean, isNone: boolean): string {
  if (isDrawn) return 'in the picture';
  return isNone ? 'none' : 'not answered';
}

/** A button that answers "none" for all groups that are not answered, with their names. */
function NoneOfTheRest({ answers }: { readonly answers: CardAnswers }) {
  const drawn = groupsDrawn(answers);
  const open = GROUP_IDS.filter((group) => !drawn.has(group) && !answers.none.includes(group));
  return (
    <p className="quick__rest">
      <button
        type="button"
        className="button"
        disabled={open.length === 0}
        onClick={() => answer({ none: [...answers.none, ...open] })}
      >
        {open.length === 0
          ? 'Everything here is answered'
          : `I looked on this whole floor: no ${listed(open.map((group) => GROUPS[group].words))}`}
      </button>
    </p>
  );
}
