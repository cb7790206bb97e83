import { useState } from 'react';
import { tapedOffsets } from '../../../geometry/dimension/opening-offsets.ts';
import { wallsRunningOn } from '../../../geometry/edit/walls-running-on.ts';
import { cornerWords, wallEndNames } from '../../../geometry/messages/index.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Mm, Wall } from '../../../geometry/plan/model.ts';
import { joinWalls, splitWall } from '../../state/edit-walls.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { LengthField } from '../fields/length-field.tsx';
import { useThrottled } from '../hooks/use-throttled.ts';

/** Splits a wall, by number or by a press on the sheet, and joins two walls that continue each other. */
export function WallParts({ wall }: { readonly wall: Wall }) {
  const model = useThrottled(selectModel);
  const { setTool } = useAppStore.getState();
  const whole = wallLength(wall);
  const ends = wallEndNames(wall);
  const [at, setAt] = useState<Mm | null>(null);
  const middle = { offset: whole / 2, width: 0 };
  const [taped, other] = tapedOffsets(model, wall, middle);
  const corner = taped && cornerWords([taped.lines.left[0], taped.lines.right[0]], other ? null : taped.facing).from;
  // From the left corner as seen from within the first room; from the wall's `from` end if no room is beside it.
  const start = taped?.left ?? middle.offset;
  const way = taped?.way ?? 1;
  const wanted = at ?? start;
  const place = () => whole / 2 + way * (wanted - start);
  return (
    <details className="more">
      <summary>Split it, or join it with another</summary>
      <div className="more__body">
        <div className="fields">
          <LengthField
            label={corner ? `From the ${corner.name} corner, ${corner.seen}` : `From its ${ends.from} end`}
            value={wanted}
            onCommit={(mm) => {
              setAt(mm);
              return undefined;
            }}
          />
        </div>
        <div className="buttons">
          <button type="button" className="button" onClick={() => splitWall(wall.id, place())}>
            Split it there
          </button>
          <button type="button" className="button" onClick={() => setTool({ kind: 'split-wall', id: wall.id })}>
            Press where to split it
          </button>
          {wallsRunningOn(model.level, wall).map(({ end, other }) => (
            <button
              key={`${end} ${other.id}`}
              type="button"
              className="button"
              onClick={() => joinWalls(wall.id, other.id)}
            >
              Join it at its {ends[end]} end
            </button>
          ))}
        </div>
      </div>
    </details>
  );
}
