/** The engine as the app and the command line see it. */

export { shapeBody, shapeMiddle, shapeRing } from './body.ts';
export { checkDetector, checkPlan } from './check/check-detector.ts';
export { compareProfiles, type ProfileReport } from './check/compare-profiles.ts';
export { levelBar } from './check/level.ts';
export { type LevelLocations, testLocations } from './check/locations.ts';
export { lookedForQuestions, openChecks, openQuestions } from './check/open-checks.ts';
export { roomAt, roomBar } from './check/room.ts';
export { MEETS } from './check/subjects.ts';
export type { Check, DetectorReport, Verdict } from './check/types.ts';
export { whyNot } from './check/why-not.ts';
export { marginField } from './field/margin-field.ts';
export type { Limit } from './field/primitives.ts';
export { buildLevel } from './level/build-level.ts';
export { SNAP, TOUCH } from './level/touch.ts';
export type { LevelModel, Notice, Room } from './level/types.ts';
export { emptyLevel, emptyPlan } from './plan/empty.ts';
export * from './plan/model.ts';
export { type PlanProblem, parsePlan } from './plan/parse.ts';
export { writePlan } from './plan/write.ts';
export type { Ring } from './plane/types.ts';
export type { ArcEdge, ArcRing, Edge } from './region/arc-types.ts';
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
export { bestGroups, bestPairs, type SpotPair } from './spots/best-pairs.ts';
export { bestSpots, type Spot } from './spots/best-spots.ts';
export { companionSpot, companionSpots } from './spots/companion.ts';
export type { SpotGroup } from './spots/group.ts';
export { companionGap } from './spots/group-shapes.ts';
export { type HeightInterval, heightsAt, surfaceBelow } from './spots/heights.ts';
export { limitCheck } from './spots/limit-check.ts';
export { formatArea, formatLength, formatMeasured, formatRequired } from './units.ts';
export * from './words.ts';
