import { unmeasuredCarrier } from '../../../geometry/check/support.ts';
import { findItem, type ListedItem } from '../../../geometry/edit/listed-items.ts';
import { counted } from '../../../geometry/messages/index.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { usePanels } from '../../commands/panels.ts';
import { useAppStore } from '../../state/store.ts';
import { useLevel } from '../hooks/use-level.ts';
import { CommandButtons } from '../menu/command-buttons.tsx';
import { itemHeading } from '../menu/target-name.ts';
import { DetectorFields } from './detector-fields.tsx';
import { FixtureFields } from './fixture-fields.tsx';
import { ManyFields } from './many-fields.tsx';
import { ObjectFields } from './object-fields.tsx';
import { OpeningFields } from './opening-fields.tsx';
import { RoomFields } from './room-fields.tsx';
import { RowFields } from './row-fields.tsx';
import { WallFields } from './wall-fields.tsx';
import './item-panel.css';

/** The fields of the selection, with lengths as they are read from the tape. */
export function ItemPanel() {
  const level = useLevel();
  const selection = useAppStore((state) => state.selection);
  const found = selection.map((id) => findItem(level, id)).filter((each) => each !== null);
  const [first] = found;
  if (!first) return null;
  const many = found.length > 1;
  return (
    <section className="item-panel" aria-label="Dimensions of the selection">
      <h2>{many ? `${counted(found.length, 'thing')} selected` : itemHeading(first)}</h2>
      <CommandButtons ids={found.map(({ item }) => item.id)} />
      <RowFields />
      {many ? <ManyFields found={found} /> : <Fields key={first.item.id} found={first} />}
    </section>
  );
}

/** The fields of the selected detector, folded under its verdict. */
export function DetectorNumbers() {
  const open = usePanels((ui) => ui.numbersOpen);
  const level = useLevel();
  const detector = level.detectors.find(({ id }) => useAppStore.getState().selection.includes(id));
  const unit = useAppStore((state) => state.plan.display.length);
  if (!detector) return null;
  return (
    <details
      className="detector-numbers"
      open={open}
      onToggle={(event) => usePanels.setState({ numbersOpen: event.currentTarget.open })}
    >
      <summary>
        Dimensions{' '}
        <span className="soft">
          {formatMeasured(detector.base, unit)} above the floor
          {unmeasuredCarrier(level, detector) ? ', not measured' : ''}
        </span>
      </summary>
      <ItemPanel />
    </details>
  );
}

function Fields({ found }: { readonly found: ListedItem }) {
  switch (found.list) {
    case 'walls':
      return <WallFields wall={found.item} />;
    case 'openings':
      return <OpeningFields opening={found.item} />;
    case 'rooms':
      return <RoomFields room={found.item} />;
    case 'fixtures':
      return <FixtureFields fixture={found.item} />;
    case 'objects':
      return <ObjectFields object={found.item} />;
    case 'detectors':
      return <DetectorFields detector={found.item} />;
  }
}
