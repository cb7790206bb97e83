import { useMemo } from 'react';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { checkedLevels } from '../../../state/selectors.ts';

/** Returns the place of each detector by its id: "Family room, Basement". */
export function usePlaces(plan: Plan): ReadonlyMap<string, string> {
  return useMemo(
    () =>
      new Map(
        checkedLevels(plan).flatMap(({ model: { level }, reports }) =>
          reports.map(({ id, room }) => {
            const name = level.rooms.find((each) => each.id === room)?.name.trim() || 'room without a name';
            return [id, [name, level.name.trim()].filter(Boolean).join(', ')] as const;
          }),
        ),
      ),
    [plan],
  );
}
