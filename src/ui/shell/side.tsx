import { CAUTIONS, capital, headlineText, toneOf } from '../../../geometry/messages/index.ts';
import { fold, unfold, usePanels } from '../../commands/panels.ts';
import type { AppState } from '../../state/app-state.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { later } from '../hooks/later.tsx';
import { selectSpokenId, useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { LoosenedShort } from '../stages/place/loosened.tsx';
import { VerdictMark } from '../verdict/verdict-mark.tsx';
import { VerdictPanel } from '../verdict/verdict-panel.tsx';
import { ColumnHead } from './column-head.tsx';
import './side.css';

const DetectorChips = later(() => import('../verdict/detector-chips.tsx').then((part) => part.DetectorChips));
const ItemPanel = later(() => import('../inspector/item-panel.tsx').then((part) => part.ItemPanel));
const DetectorNumbers = later(() => import('../inspector/item-panel.tsx').then((part) => part.DetectorNumbers));

/**
 * The verdict column: the verdict panel with the folded fields of its detector. If something else is selected, its fields come first. The
 * cautions do not scroll.
 */
export function SideColumn() {
  const folded = usePanels((ui) => ui.sideFolded);
  const detectorSelected = useAppStore(onlyDetectorSelected);
  const somethingSelected = useAppStore(({ selection }) => selection.length > 0);
  // A single detector needs no chip: its verdict is shown large, unless the fields of another item are above it.
  const showChips = useLevel().detectors.length > (detectorSelected ? 1 : 0);
  if (folded) return <SideRail />;
  return (
    <aside className="side" aria-label="Verdict and dimensions">
      <ColumnHead name="Verdict" onFold={() => fold('side')}>
        {showChips && <DetectorChips />}
      </ColumnHead>
      <div className="side__scroll">
        {somethingSelected && !detectorSelected && <ItemPanel />}
        <VerdictPanel numbers={detectorSelected && <DetectorNumbers />} />
      </div>
      <p className="cautions">{CAUTIONS.join(' ')}</p>
    </aside>
  );
}

function onlyDetectorSelected({ selection, plan }: AppState): boolean {
  return selection.length === 1 && plan.levels.some(({ detectors }) => detectors.some(({ id }) => id === selection[0]));
}

/** The folded column, which still shows the verdict: it is needed while a detector is dragged. */
function SideRail() {
  const spokenId = useThrottled(selectSpokenId);
  const report = useThrottled(shownReports).find(({ id }) => id === spokenId);
  const tone = report && toneOf(report);
  const label = useLevel()
    .detectors.find(({ id }) => id === spokenId)
    ?.label.trim();
  const selected = useAppStore((state) => state.selection.length > 0 && !onlyDetectorSelected(state));
  return (
    <aside className="side side--folded" aria-label="Verdict and dimensions, folded" data-verdict={tone ?? 'none'}>
      <button type="button" className="rail" onClick={() => unfold('side')}>
        {tone && <VerdictMark verdict={tone} size={22} />}
        <span>{report ? capital(headlineText(report)) : 'Verdict'}</span>
        {label && (
          <span className="rail__more rail__whose">
            <span className="unseen">placement of </span>
            {label}
          </span>
        )}
        <LoosenedShort />
        {selected && <span className="rail__more">and dimensions of the selection</span>}
        <span className="unseen">, unfold</span>
      </button>
    </aside>
  );
}
