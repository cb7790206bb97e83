import { headlineText, toneOf } from '../../../geometry/messages/index.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { selectSpokenId, useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { VerdictMark } from './verdict-mark.tsx';
import './detector-chips.css';

/** All detectors of the level with their verdicts, shown for any selection. */
export function DetectorChips() {
  const level = useLevel();
  const reports = useThrottled(shownReports);
  const spokenId = useThrottled(selectSpokenId);
  const select = useAppStore((state) => state.select);
  return (
    <ul className="chips" aria-label="Detectors on this level">
      {reports.map((report) => {
        const { id } = report;
        const tone = toneOf(report);
        const label = level.detectors.find((each) => each.id === id)?.label.trim() || 'no label';
        return (
          <li key={id}>
            <button
              type="button"
              className="chip"
              data-verdict={tone}
              aria-pressed={id === spokenId}
              onClick={() => select([id])}
            >
              <VerdictMark verdict={tone} size={16} />
              {label} <span className="chip__word">{headlineText(report)}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}
