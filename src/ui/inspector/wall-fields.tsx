import { useState } from 'react';
import { TAPED_BY } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import type { MovingEnd } from '../../../geometry/edit/stretch.ts';
import { correctedWall, insideEnd, shiftedWall } from '../../../geometry/edit/wall-edit.ts';
import { withThicknessMeasured } from '../../../geometry/edit/wall-thickness.ts';
import { thicknessRefusal, wallEndNames } from '../../../geometry/messages/index.ts';
import { TAPED_BY_NAME } from '../../../geometry/messages/taped-by.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Mm, Wall, WallSide } from '../../../geometry/plan/model.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { itemFieldId } from '../../commands/go-to.ts';
import { editLevel, setThickness } from '../../state/edit-walls.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { withSaid } from '../../state/wall-settings.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FieldGroup } from '../fields/field-group.tsx';
import { LengthField } from '../fields/length-field.tsx';
import { useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { WallParts } from './wall-parts.tsx';

const SIDES: readonly { readonly value: WallSide; readonly words: string }[] = [
  { value: 'auto', words: 'as drawn' },
  { value: 'outside', words: 'exterior wall' },
  { value: 'inside', words: 'interior wall' },
];

export function WallFields({ wall }: { readonly wall: Wall }) {
  const { updateItem } = useAppStore.getState();
  const ends = wallEndNames(wall);
  return (
    <>
      <div className="fields">
        <WallLength wall={wall} />
        <LengthField
          label={ends.to === 'left' || ends.to === 'right' ? 'Move it down by' : 'Move it right by'}
          value={0}
          negative
          hint={ends.to === 'left' || ends.to === 'right' ? 'With a minus: up.' : 'With a minus: left.'}
          onCommit={(mm) => editLevel((now, inUnit) => shiftedWall(now, wall.id, mm, inUnit))}
        />
        <Thickness wall={wall} />
        <div className="wide">
          <ChoiceField
            label="Exterior or interior"
            value={wall.side}
            choices={SIDES}
            hint="As drawn: exterior where no closed room lies behind it. Choose interior where the neighbor's house adjoins."
            onCommit={(side) => updateItem(wall.id, { side })}
          />
        </div>
      </div>
      <WallParts wall={wall} />
    </>
  );
}

/**
 * The thickness of the wall. If it is assumed, a button marks all walls of this assumed thickness as measured, and another thickness can be
 * entered for all of them.
 */
function Thickness({ wall: { id, thickness, thicknessAnswered } }: { readonly wall: Wall }) {
  const unit = useAppStore((state) => state.plan.display.length);
  const level = useLevel();
  const [isForAll, setForAll] = useState(false);
  const { run } = useAppStore.getState();
  const isAssumed = thicknessAnswered === false;
  const alike = isAssumed
    ? level.walls.filter((wall) => wall.thicknessAnswered === false && wall.thickness === thickness)
    : [];
  const all = `all ${alike.length} walls of ${formatMeasured(thickness, unit)}`;
  return (
    <>
      <LengthField
        id={itemFieldId('thickness')}
        label="Thickness"
        value={thickness}
        bare="small"
        onCommit={(mm) =>
          thicknessRefusal(mm, unit) ||
          setThickness(isForAll && alike.length > 1 ? alike.map((wall) => wall.id) : [id], mm)
        }
      />
      {alike.length > 1 && (
        <div className="wide">
          <ChoiceField
            label="Change it for"
            value={isForAll ? 'all' : 'one'}
            choices={[
              { value: 'one', words: 'this wall' },
              { value: 'all', words: all },
            ]}
            onCommit={(chosen) => setForAll(chosen === 'all')}
          />
        </div>
      )}
      {isAssumed && (
        <div className="wide">
          <p className="soft">The thickness is assumed, not measured. Measure it at a door or a window.</p>
          <button
            type="button"
            className="button"
            onClick={() => run((plan) => withThicknessMeasured(plan, level.id, [thickness]))}
          >
            All walls of {formatMeasured(thickness, unit)}: measured
          </button>
        </div>
      )}
    </>
  );
}

/** The taped length of the wall, and which end moves when it is corrected. */
function WallLength({ wall }: { readonly wall: Wall }) {
  const model = useThrottled(selectModel);
  const [moves, setMoves] = useState<MovingEnd | null>(null);
  const settings = useAppStore(({ wallSettings }) => wallSettings);
  const { setWallSettings } = useAppStore.getState();
  const { by } = settings;
  const taped = wallLengths(model, wall)[by];
  const ends = wallEndNames(wall);
  const usual = insideEnd(model, wall);
  const lengthen = (mm: Mm) =>
    editLevel((now, inUnit) => correctedWall(now, wall.id, wallLength(wall) + mm - taped, moves ?? usual, inUnit));
  return (
    <FieldGroup name="Length">
      <LengthField label={TAPED_BY_NAME[by]} value={taped} onCommit={lengthen} />
      <div className="wide">
        <ChoiceField
          label="Taped"
          value={by}
          choices={TAPED_BY.map((value) => ({ value, words: TAPED_BY_NAME[value] }))}
          onCommit={(chosen) => setWallSettings(withSaid(settings, { by: chosen }))}
        />
      </div>
      <div className="wide">
        <ChoiceField
          label="The end that moves"
          value={moves ?? usual}
          choices={[
            { value: 'from', words: `${ends.from} end` },
            { value: 'to', words: `${ends.to} end` },
            { value: 'both', words: 'both ends, by half' },
          ]}
          hint="Walls that are joined there go along, and so does what stands against them. The end at an interior wall moves unless you say otherwise."
          onCommit={setMoves}
        />
      </div>
    </FieldGroup>
  );
}
