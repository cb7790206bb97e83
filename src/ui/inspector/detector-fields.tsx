import { circleReach } from '../../../geometry/dimension/footprint.ts';
import { heightsRefusal, sizeRefusal } from '../../../geometry/messages/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { addCompanion } from '../../commands/companion.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { LengthField } from '../fields/length-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useLevel } from '../hooks/use-level.ts';
import { useThrottled } from '../hooks/use-throttled.ts';
import { SupportAnswer } from '../questions/support-answer.tsx';
import { MoveButtons } from './move-buttons.tsx';
import { PlaceFields } from './place-fields.tsx';

export function DetectorFields({ detector }: { readonly detector: Detector }) {
  const { ceiling, detectors } = useLevel();
  const unit = useAppStore((state) => state.plan.display.length);
  const updateItem = useAppStore((state) => state.updateItem);
  const report = useThrottled(shownReports).find((each) => each.id === detector.id);
  const { id, label, at, base, radius, tall, pair } = detector;
  const companions = pair === null ? 0 : detectors.filter((each) => each.id !== id && each.pair === pair).length;
  const change = (patch: Partial<Detector>, refusal: string) => {
    if (refusal) return refusal;
    return updateItem(id, patch);
  };
  return (
    <div className="fields">
      <TextField label="Label" value={label} onCommit={(text) => updateItem(id, { label: text })} />
      <TextField
        label="Pair"
        value={pair ?? ''}
        placeholder="none"
        onCommit={(text) => updateItem(id, { pair: text.trim() || null })}
      />
      <LengthField
        label="Underside, above floor"
        value={base}
        bare="small"
        onCommit={(mm) => change({ base: mm }, heightsRefusal(mm, mm + tall, ceiling, unit))}
      />
      <PlaceFields middle={at} reach={circleReach(radius)} />
      <MoveButtons />
      <LengthField
        label="Across"
        value={radius * 2}
        bare="small"
        onCommit={(mm) => change({ radius: mm / 2 }, sizeRefusal(mm))}
      />
      <LengthField
        label="How tall"
        value={tall}
        bare="small"
        onCommit={(mm) => change({ tall: mm }, sizeRefusal(mm) || heightsRefusal(base, base + mm, ceiling, unit))}
      />
      {report && (
        <div className="wide">
          <SupportAnswer detector={detector} report={report} />
        </div>
      )}
      {companions === 0 && (
        <button type="button" className="button wide" onClick={() => addCompanion(id)}>
          Place a second one beside it
        </button>
      )}
      <p className="wide fine soft">Two detectors with the same text under Pair are placed side by side.</p>
    </div>
  );
}
