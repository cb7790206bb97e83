/** The engine as the app and the command line see it. */

export { bodyDistance, shapeBody, shapeMiddle, shapeRing } from './body.ts';
export { checkDetector, checkPlan } from './check/check-detector.ts';
export { compareProfiles, type ProfileReport } from './check/compare-profiles.ts';
export { levelBar } from './check/level.ts';
export { type LevelLocations, type Locations, testLocations } from './check/locations.ts';
export { compareVerdicts, worstVerdict } from './check/measure.ts';
export { type LookedForQuestion, lookedForQuestions, openChecks, openQuestions } from './check/open-checks.ts';
export { type RoomBar, roomAt, roomBar } from './check/room.ts';
export { MEETS } from './check/subjects.ts';
export type { Check, DetectorReport, Verdict, Witness } from './check/types.ts';
export { whyNot } from './check/why-not.ts';
export { type MarginField, marginField } from './field/margin-field.ts';
export type { Limit } from './field/primitives.ts';
export { buildLevel } from './level/build-level.ts';
export { SNAP, TOUCH } from './level/touch.ts';
export type { LevelModel, Notice, OpeningBody, Ring, Room, WallJoint, WallPiece } from './level/types.ts';
export { emptyLevel, emptyPlan } from './plan/empty.ts';
export * from './plan/model.ts';
export { type ParsedPlan, type PlanProblem, parsePlan } from './plan/parse.ts';
export { writePlan } from './plan/write.ts';
export { levelRegion, type RegionOptions } from './region/level-region.ts';
export { arcRingsContain, edgeEnds, JUST_INSIDE, nearestOnEdge, nearestSpot } from './region/nearest.ts';
export type {
  ArcEdge,
  ArcRing,
  Edge,
  LevelRegion,
  LineEdge,
  NearestSpot,
  Probe,
  RoomRegion,
  Zone,
} from './region/types.ts';
export {
  type EffectiveRule,
  effectiveRules,
  HOME_SHORT_TERM_ID,
  isOverridable,
  PROFILES,
  profileById,
  profileOf,
  publishedDistance,
  sourceLine,
} from './rules/profiles.ts';
export { type Profile, RULE_IDS, type Rule, type RuleId, type Source, type SourceMark } from './rules/types.ts';
export { bestGroups, bestPairs, type GroupOptions, type SpotPair } from './spots/best-pairs.ts';
export { bestSpots, SPOT_TOLERANCE, SPOTS_APART, type Spot, type SpotOptions } from './spots/best-spots.ts';
export { companionSpot, companionSpots } from './spots/companion.ts';
export type { SpotGroup } from './spots/group.ts';
export { companionGap, type Gap } from './spots/group-shapes.ts';
export { type HeightInterval, type HeightReason, heightsAt, type Surface, surfaceBelow } from './spots/heights.ts';
export { limitCheck } from './spots/limit-check.ts';
export { formatArea, formatLength, formatMeasured, formatRequired, parseLength } from './units.ts';
export * from './words.ts';
