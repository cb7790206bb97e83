/** The data of one set of sheets: the level, checked once, for all that is drawn. */
import type { ArcRing } from '../../geometry/arrangement/types.ts';
import { checkPlan } from '../../geometry/check/check-detector.ts';
import { levelBar } from '../../geometry/check/level.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { ringsContain } from '../../geometry/plane/ring.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import type { Computed } from '../../geometry/recheck/compare.ts';
import { regionUnderBar } from '../../geometry/region/barred-level.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { arcRingsContain } from '../../geometry/region/nearest.ts';
import type { LevelRegion, Probe, Zone } from '../../geometry/region/types.ts';
import { onEdge } from '../../geometry/region/visible-edges.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import type { Ms } from '../protocol/timing/clock.ts';
import { testState } from '../protocol/validity/test-state.ts';
import type { TestState } from '../protocol/validity/validity.ts';
import { verifiedLevels } from '../protocol/validity/verified-placement.ts';

export interface SubjectMatter {
  readonly plan: Plan;
  readonly level: Level;
  readonly model: LevelModel;
  readonly region: LevelRegion;
  /** Zones that overlap a room that is not barred as a whole. */
  readonly zones: readonly Zone[];
  readonly rules: readonly EffectiveRule[];
  readonly detectors: readonly {
    readonly detector: Detector;
    readonly report: DetectorReport;
    readonly computed: Computed;
  }[];
  /** The state of the whole test, all levels included. */
  readonly state: TestState;
  /** The document that the drawing is a page of. */
  readonly paper: 'sheets' | 'report';
  /** Why the level is not the one to test; empty if it is. */
  readonly levelBar: string;
}

/**
 * Checks a level. Throws if the plan does not have it.
 * @param probe detector that the allowed area is drawn for; left out, the level's first, or a common canister on a table
 * @param computed outcome of the second computation by detector id: where it differs, the verdict is unknown
 * @param now ms: events recorded for later have not happened yet
 */
export function subjectMatter(
  plan: Plan,
  levelId: string,
  probe?: Probe,
  computed: ReadonlyMap<string, Computed> = new Map(),
  now?: Ms,
): SubjectMatter {
  const level = plan.levels.find(({ id }) => id === levelId);
  if (!level) throw new Error(`The plan has no level "${levelId}".`);
  const model = buildLevel(level);
  const wanted = probe ?? level.detectors[0] ?? USUAL_DETECTOR;
  const bar = levelBar(plan, level);
  const region = regionUnderBar(levelRegion(plan, model, wanted), bar);
  const placement = verifiedLevels(plan, checkPlan(plan).levels, computed);
  const here = placement.find(({ id }) => id === levelId);
  const floors = region.rooms.filter(({ barred }) => !barred).map(({ room }) => room.floorRings);
  return {
    plan,
    level,
    model,
    region,
    zones: region.zones.filter(({ outlines }) => floors.some((floor) => touches(outlines, floor))),
    rules: effectiveRules(plan.protocol),
    detectors: level.detectors.flatMap((detector) => {
      const report = here?.detectors.find(({ id }) => id === detector.id);
      return report ? [{ detector, report, computed: report.computed }] : [];
    }),
    state: testState(plan, placement, now),
    paper: 'sheets',
    levelBar: bar,
  };
}

/** Whether an area overlaps a floor: a boundary point of the one is inside the other. */
function touches(rings: readonly ArcRing[], floor: readonly Ring[]): boolean {
  const shares = [0, 0.2, 0.4, 0.6, 0.8];
  return (
    floor.flat().some((p) => arcRingsContain(rings, p)) ||
    rings.flat().some((edge) => shares.some((share) => ringsContain(floor, onEdge(edge, share))))
  );
}
