import { memo } from 'react';
import { TONE_WORD } from '../../../geometry/messages/tone.ts';
import type { PlanPreview } from '../../storage/library/records.ts';
import { inOrderOfWorst } from '../../storage/library/verdict-order.ts';
import { SHEET_THEME } from '../../theme/tokens.ts';
import { VerdictMark } from '../verdict/verdict-mark.tsx';

/** The picture has the colors of print in every theme. */
const SHEET = { background: SHEET_THEME.paper, color: SHEET_THEME.inkSoft } as const;

/** The drawing of a plan. It has no alternative text, because the text beside it says the same. */
export const PlanPicture = memo(function PlanPicture({ picture }: { readonly picture: string | undefined }) {
  if (picture === '') {
    return (
      <span className="picture" style={SHEET}>
        Nothing drawn yet
      </span>
    );
  }
  return (
    <span className="picture" style={SHEET}>
      {picture && <img src={`data:image/svg+xml,${encodeURIComponent(picture)}`} alt="" draggable={false} />}
    </span>
  );
});

/** Number of detectors by verdict, the worst first, and the state of the whole test. */
export function VerdictCounts({ look }: { readonly look: PlanPreview | null | undefined }) {
  if (look === undefined) return <span className="counts">&nbsp;</span>;
  const counts = look === null ? [] : inOrderOfWorst(look.verdicts);
  if (look === null) return <span className="counts">Could not be read</span>;
  if (counts.length === 0) return <span className="counts soft">No detector placed</span>;
  return (
    <span className="counts">
      {counts.map(([tone, count]) => (
        <span key={tone} className="count" data-verdict={tone}>
          <VerdictMark verdict={tone} size={16} />
          {count} {TONE_WORD[tone]}
        </span>
      ))}
      <span className="counts__test">The test: {look.test.toLowerCase()}</span>
    </span>
  );
}
