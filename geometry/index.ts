/** The engine as the app and the command line see it. */

export type { ArcEdge, ArcRing, Edge } from './arrangement/types.ts';
export { checkDetector, checkPlan } from './check/check-detector.ts';
export { compareProfiles, type ProfileReport } from './check/compare-profiles.ts';
export { levelBar } from './check/level.ts';
export { lookedForQuestions, openChecks, openQuestions } from './check/open-checks.ts';
export { roomAt, roomBar } from './check/room.ts';
export { MEETS } from './check/subjects.ts';
export type { Check, DetectorReport, Verdict } from './check/types.ts';
export { whyNot } from './check/why-not.ts';
export { buildLevel } from './level/build-level.ts';
export { SNAP, TOUCH } from './level/touch.ts';
export type { LevelModel, Notice, Room } from './level/types.ts';
export * from './messages/index.ts';
export * from './plan/model.ts';
export { shapeBody, shapeMiddle, shapeRing } from './plane/body.ts';
export type { Ring } from './plane/types.ts';
export { emptyLevel, emptyPlan } from './planfile/empty.ts';
export { type PlanProblem, parsePlan } from './planfile/parse.ts';
export { writePlan } from './planfile/write.ts';
export { levelRegion } from './region/level-region.ts';
export { arcRingsContain, edgeEnds, JUST_INSIDE, nearestOnEdge, nearestSpot } from './region/nearest.ts';
export type { LevelRegion, Probe, RoomRegion, Zone } from './region/types.ts';
export {
  type EffectiveRule,
  effectiveRules,
  HOME_SHORT_TERM_ID,
  PROFILES,
  profileById,
  profileOf,
} from './rules/profiles.ts';
export type { RuleId, SourceMark } from './rules/types.ts';
export { bestGroups, bestPairs, type SpotPair } from './search/best-pairs.ts';
export { bestSpots, type Spot } from './search/best-spots.ts';
export { companionSpot, companionSpots } from './search/companion.ts';
export { marginField } from './search/field/margin-field.ts';
export type { Limit } from './search/field/primitives.ts';
export type { SpotGroup } from './search/group.ts';
export { companionGap } from './search/group-shapes.ts';
export { type HeightInterval, heightsAt, surfaceBelow } from './search/heights.ts';
export { limitCheck } from './search/limit-check.ts';
export { type LevelLocations, testLocations } from './search/locations.ts';
export { formatArea, formatLength, formatMeasured, formatRequired } from './units/index.ts';
