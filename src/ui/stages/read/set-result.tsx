import { describeSources } from '../../../../geometry/messages/sources.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Source } from '../../../../geometry/rules/types.ts';
import { unbrokenFigures } from '../../../../geometry/units/no-break.ts';
import { locationTexts, RESULT_CAUTIONS } from '../../../protocol/results/describe-location.ts';
import type { LocationReport } from '../../../protocol/results/location-report.ts';
import { locationName } from '../../../protocol/results/locations.ts';
import { NEXT_STEP_SOURCES } from '../../../protocol/results/next-step-sources.ts';
import { otherUnit, radonText } from '../../../protocol/results/radon.ts';
import { ApartBar } from './apart-bar.tsx';
import { LevelsTable } from './levels-table.tsx';

interface Props {
  readonly plan: Plan;
  readonly report: LocationReport;
  readonly place: string;
}

/** The outcome of one location: the figure, the next step with its source, the agreement of a pair, the levels of several authorities. */
export function SetResult({ plan, report, place }: Props) {
  const { state, mean, pairStatus, next, precision, rpd, atMost } = report;
  const unit = plan.display.radon;
  const words = locationTexts(plan, report);
  const [step, rest] = inTwo(words.step);
  const usable = state.validity === 'holds' && pairStatus !== 'straddles-by-two';
  // Both units are converted from the exact mean, never from a rounded figure.
  const figure = usable ? mean : null;
  return (
    <section
      className="set"
      aria-label={locationName(report)}
      data-agreement={pairStatus}
      data-standing={state.validity}
    >
      <h3>{locationName(report)}</h3>
      <p className="small soft">{place}</p>
      {figure && (
        <>
          <p className="set__figure">
            {atMost && <span className="set__other">at most </span>}
            {radonText(figure, unit)} <span className="set__other">{radonText(figure, otherUnit(unit))}</span>
          </p>
          <p className="small">{RESULT_CAUTIONS[0]}</p>
        </>
      )}
      <div className="set__step">
        <p className="set__next">{unbrokenFigures(step)}</p>
        {rest && <p>{unbrokenFigures(rest)}</p>}
        {words.conflict && <p>Texts differ: {unbrokenFigures(words.conflict)}</p>}
        <Sources of={NEXT_STEP_SOURCES[next.id].sources} />
      </div>
      {[...words.results, ...words.earlier].map((line) => (
        <p key={line}>{unbrokenFigures(line)}</p>
      ))}
      {words.pair.length > 0 && (
        <div className="set__pair">
          {words.pair.map((line) => (
            <p key={line}>{unbrokenFigures(line)}</p>
          ))}
          {rpd && precision?.band.of === 'percent' && pairStatus !== 'straddles-by-two' && (
            <ApartBar rpd={rpd} band={precision.band} />
          )}
          {precision && <Sources of={precision.band.sources} />}
        </div>
      )}
      {figure && <LevelsTable mean={figure} unit={unit} />}
    </section>
  );
}

function Sources({ of }: { readonly of: readonly Source[] }) {
  if (of.length === 0) return null;
  return (
    <details className="small soft">
      <summary>Source</summary>
      {describeSources(of)}
    </details>
  );
}

/** Returns the first sentence, which says what to do, and the rest. */
function inTwo(text: string): readonly [string, string] {
  const end = text.indexOf('. ');
  return end < 0 ? [text, ''] : [text.slice(0, end + 1), text.slice(end + 2)];
}
