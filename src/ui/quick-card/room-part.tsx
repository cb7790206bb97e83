import { capital, ROOM_USE_NOUN } from '../../../geometry/messages/index.ts';
import { ROOM_USES_ALLOWED, ROOM_USES_BARRED, type RoomUse } from '../../../geometry/plan/model.ts';
import { FOOT, formatMeasured, type LengthUnit } from '../../../geometry/units/index.ts';
import { LEVEL_ANSWERS } from '../../quick-card/answers.ts';
import { LEVELS } from '../../quick-card/things.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { OpenLength } from './answer-fields.tsx';
import { ChoiceRow } from './choice-row.tsx';
import { answer, useQuickCard } from './quick-card-store.ts';
import { WallsPicture } from './walls-picture.tsx';

/** The uses that most people test, each as a button; the others are in a list. */
const USUAL_USES = [
  'family-room',
  'bedroom',
  'living-room',
  'office',
  'unfinished',
] as const satisfies readonly RoomUse[];
const OTHER_USES = ROOM_USES_ALLOWED.filter((use) => !(USUAL_USES as readonly RoomUse[]).includes(use));
const useChoice = (value: RoomUse) => ({ value, words: capital(ROOM_USE_NOUN[value]) });

const LENGTHS: Readonly<Record<LengthUnit, readonly number[]>> = {
  'feet-inches': [8, 10, 12, 14, 16, 20, 24].map((feet) => feet * FOOT),
  metric: [2.5, 3, 3.5, 4, 5, 6, 7].map((meters) => meters * 1000),
};

/** Asks for the room: floor of the house, use, lengths, and which walls are outside. */
export function RoomPart() {
  const { level, use, unit, across, along } = useQuickCard(({ answers }) => answers);
  return (
    <section className="quick__part" aria-labelledby="quick-room">
      <h3 id="quick-room">2. The room</h3>
      <p>Take a room on the lowest floor that somebody lives on.</p>
      <ChoiceRow
        label="Which floor is it on?"
        choices={LEVEL_ANSWERS.map((value) => ({ value, words: LEVELS[value].words }))}
        chosen={level}
        onChoose={(value) => answer({ level: value })}
      />
      <ChoiceRow
        label="What is it used for?"
        choices={USUAL_USES.map(useChoice)}
        chosen={use}
        onChoose={(value) => answer({ use: value })}
      />
      <ChoiceField
        label="Or another use"
        value={use}
        choices={[
          { group: 'Kit allowed', choices: [...USUAL_USES, ...OTHER_USES].map(useChoice) },
          { group: 'No kit allowed', choices: ROOM_USES_BARRED.map(useChoice) },
        ]}
        onCommit={(value) => answer({ use: value })}
      />
      <ChoiceRow
        label="Your tape"
        choices={[
          { value: 'feet-inches', words: 'Feet and inches' },
          { value: 'metric', words: 'Meters' },
        ]}
        chosen={unit}
        onChoose={(value) => answer({ unit: value ?? unit })}
      />
      <p>
        Stand where you come in. That wall is the lower one of the picture. Measure the two lengths inside, from wall to
        wall.
      </p>
      <LengthRow
        label="From the left wall to the right wall"
        value={across}
        onCommit={(mm) => answer({ across: mm })}
      />
      <LengthRow label="From your wall to the far wall" value={along} onCommit={(mm) => answer({ along: mm })} />
      <WallsPicture />
    </section>
  );
}

interface LengthRowProps {
  readonly label: string;
  readonly value: number | null;
  readonly onCommit: (mm: number | null) => void;
}

/** A field for a taped length, with buttons for round lengths. */
function LengthRow({ label, value, onCommit }: LengthRowProps) {
  const unit = useQuickCard(({ answers }) => answers.unit);
  return (
    <div className="quick__length">
      <OpenLength label={label} unit={unit} value={value} onCommit={onCommit} />
      <ChoiceRow
        label={`${label}: round lengths`}
        quiet
        choices={LENGTHS[unit].map((mm) => ({ value: mm, words: formatMeasured(mm, unit) }))}
        chosen={value}
        onChoose={onCommit}
      />
    </div>
  );
}
