import type { LevelModel } from '../level/types.ts';
import type { Detector, Plan } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import { PROFILES } from '../rules/profiles.ts';
import type { Profile } from '../rules/types.ts';
import { checkDetector } from './check-detector.ts';
import type { DetectorReport } from './types.ts';

/** The report on a position under one published profile. */
export interface ProfileReport {
  readonly profile: Profile;
  /** The plan's protocol with this profile instead, for the wording of the report. */
  readonly protocol: Plan['protocol'];
  readonly report: DetectorReport;
}

/**
 * Checks a detector against every published profile: without the plan's overrides, with its purpose and tape tolerance.
 */
export function compareProfiles(plan: Plan, model: LevelModel, detector: Detector): readonly ProfileReport[] {
  return PROFILES.map((profile) => {
    const protocol = protocolOf(profile);
    return { profile, protocol, report: checkDetector({ ...plan, protocol }, model, detector) };
  });
}

/** One object per profile, because results are memoized by protocol. */
const protocolOf = memoize((profile: Profile): Plan['protocol'] => ({ profile: profile.id, overrides: [] }));
