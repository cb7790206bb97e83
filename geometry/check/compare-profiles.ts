import type { LevelModel } from '../level/types.ts';
import type { Detector, Plan } from '../plan/model.ts';
import { PROFILES } from '../rules/profiles.ts';
import type { Profile } from '../rules/types.ts';
import { checkDetector } from './check-detector.ts';
import type { DetectorReport } from './types.ts';

/** What one profile, as published, says of a spot. */
export interface ProfileReport {
  readonly profile: Profile;
  /** The plan's protocol as it would be under this profile alone: what the report is to be told by. */
  readonly protocol: Plan['protocol'];
  readonly report: DetectorReport;
}

/** A detector held against every profile as published: the plan's overrides are left out, its purpose and tape stay. */
export function compareProfiles(plan: Plan, model: LevelModel, detector: Detector): readonly ProfileReport[] {
  return PROFILES.map((profile) => {
    const protocol = protocolOf(profile);
    return { profile, protocol, report: checkDetector({ ...plan, protocol }, model, detector) };
  });
}

const protocols = new WeakMap<Profile, Plan['protocol']>();

/** One object for each profile, so that what is kept for a protocol is found again. */
function protocolOf(profile: Profile): Plan['protocol'] {
  let protocol = protocols.get(profile);
  if (!protocol) {
    protocol = { profile: profile.id, overrides: [] };
    protocols.set(profile, protocol);
  }
  return protocol;
}
