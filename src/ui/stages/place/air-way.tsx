import { useEffect, useMemo, useRef, useState } from 'react';
import type { Check } from '../../../../geometry/check/types.ts';
import { airRoute } from '../../../advice/air-route.ts';
import { selectModel } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { useAppStore } from '../../../state/store.ts';
import { useLevel, usePlan } from '../../hooks/use-level.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';

interface Props {
  /** Rows of one rule about moving air, the worst first. */
  readonly checks: readonly Check[];
  readonly detectorId: string;
}

/** The path of the air around the walls, in words and on the sheet, while its row is open. For information only, and it says so. */
export function AirWay({ checks, detectorId }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const open = useIsOpen(place);
  return <div ref={place}>{open && <Way checks={checks} detectorId={detectorId} />}</div>;
}

function Way({ checks, detectorId }: Props) {
  const plan = usePlan();
  const level = useLevel();
  const model = useThrottled(selectModel);
  const draggedDetector = useAppStore((state) => state.draggedDetector);
  const resting = level.detectors.find(({ id }) => id === detectorId);
  const way = useMemo(() => {
    if (!resting) return null;
    const detector = draggedDetector?.id === detectorId ? { ...resting, at: draggedDetector.at } : resting;
    const check = checks.find(({ witness, required }) => witness && required);
    return check ? airRoute(plan, model, detector, check) : null;
  }, [plan, model, resting, draggedDetector, detectorId, checks]);
  const points = way?.points ?? null;
  useEffect(() => useShown.setState({ levelId: level.id, air: points }), [level.id, points]);
  useEffect(() => () => useShown.setState({ air: null }), []);
  if (!way) return null;
  return (
    <p className="air-way">
      <strong>For information, not the rule.</strong> {way.words}
    </p>
  );
}

/** Returns whether the surrounding row is open. Nothing is computed in a closed row. */
function useIsOpen(place: React.RefObject<HTMLElement | null>): boolean {
  const [open, setOpen] = useState(false);
  useEffect(() => {
    const row = place.current?.closest('details');
    if (!row) return;
    const look = () => setOpen(row.open);
    look();
    row.addEventListener('toggle', look);
    return () => row.removeEventListener('toggle', look);
  }, [place]);
  return open;
}
