import { capital, ROOM_USE_NOUN } from '../../../geometry/messages/index.ts';
import { ROOM_USES_ALLOWED, ROOM_USES_BARRED, type RoomLabel, type RoomUse } from '../../../geometry/plan/model.ts';
import { formatArea } from '../../../geometry/units/index.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';
import { SquareUp } from './square-up.tsx';

const choicesOf = (uses: readonly RoomUse[]) => uses.map((value) => ({ value, words: capital(ROOM_USE_NOUN[value]) }));
const USES = [
  { group: 'Detector allowed', choices: choicesOf(ROOM_USES_ALLOWED) },
  { group: 'No detector allowed', choices: choicesOf(ROOM_USES_BARRED) },
];

export function RoomFields({ room }: { readonly room: RoomLabel }) {
  const model = useThrottled(selectModel);
  const unit = useAppStore((state) => state.plan.display.length);
  const updateItem = useAppStore((state) => state.updateItem);
  const floor = model.rooms.find(({ labels }) => labels.some(({ id }) => id === room.id));
  // A name that equals the use changes with the use; a typed name stays.
  const named = room.name !== capital(ROOM_USE_NOUN[room.use]);
  return (
    <div className="fields">
      <div className="wide">
        <TextField label="Name" value={room.name} onCommit={(name) => updateItem(room.id, { name })} />
      </div>
      <div className="wide">
        <ChoiceField
          label="Used for"
          value={room.use}
          choices={USES}
          onCommit={(use) => updateItem(room.id, named ? { use } : { use, name: capital(ROOM_USE_NOUN[use]) })}
        />
      </div>
      <p className="wide small soft">
        {floor ? `Floor: ${formatArea(floor.floorArea, unit)}` : 'The name does not lie in a closed room.'}
      </p>
      {floor && (
        <div className="wide">
          <SquareUp key={floor.key} room={floor} />
        </div>
      )}
    </div>
  );
}
