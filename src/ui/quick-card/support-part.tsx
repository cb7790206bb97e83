import type { Support } from '../../quick-card/answers.ts';
import { sideOfSquare } from '../../quick-card/room-plan.ts';
import { ceilingRefusal } from '../../state/ceiling-range.ts';
import { OpenLength } from './answer-fields.tsx';
import { ChoiceRow } from './choice-row.tsx';
import { answer, useQuickCard } from './quick-card-store.ts';
import { RoomPicture } from './room-picture.tsx';

/** Square of a shelf until its wall is chosen: no wall has it. */
const NO_WALL = '-1,-1';

/** Asks what the kit rests on, and who lives in the house. */
export function SupportPart() {
  const { support, ceiling, company, unit } = useQuickCard(({ answers }) => answers);
  const choose = (kind: Support['kind'] | null) => {
    if (kind === null) answer({ support: null });
    else answer({ support: kind === 'table' ? { kind, top: null } : { kind, top: null, square: NO_WALL } });
  };
  return (
    <section className="quick__part" id="quick-support" aria-labelledby="quick-support-title">
      <h3 id="quick-support-title">4. What it stands on, and who lives there</h3>
      <ChoiceRow
        label="What will it stand on?"
        choices={[
          { value: 'table', words: 'A small table that I can move' },
          { value: 'shelf', words: 'A shelf on a wall' },
        ]}
        chosen={support?.kind ?? null}
        onChoose={choose}
      />
      {support?.kind === 'shelf' && (
        <>
          <p>
            Press where the shelf is. It counts as 1 ft (30 cm) deep and as wide as the square; the kit stands at least
            4 in (10 cm) from the wall.
          </p>
          <RoomPicture
            label="Where the shelf is"
            isOpen={(square) => sideOfSquare(square) !== null}
            nameAt={(square) => (square === support.square ? 'Shelf' : '')}
            isChosen={(square) => square === support.square}
            onPress={(square) => answer({ support: { ...support, square } })}
          />
        </>
      )}
      {support && (
        <OpenLength
          label="How high its top is above the floor, if you have measured it"
          unit={unit}
          value={support.top}
          onCommit={(top) => answer({ support: { ...support, top } })}
        />
      )}
      <OpenLength
        label="From floor to ceiling, if you have measured it"
        unit={unit}
        value={ceiling}
        hint="Only a kit that stands high needs it."
        refuse={ceilingRefusal}
        onCommit={(mm) => answer({ ceiling: mm })}
      />
      <ChoiceRow
        label="Pets or small children in the house?"
        choices={[
          { value: true, words: 'Yes' },
          { value: false, words: 'No' },
        ]}
        chosen={company}
        onChoose={(value) => answer({ company: value })}
      />
    </section>
  );
}
