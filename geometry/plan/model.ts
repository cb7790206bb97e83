/**
 * The plan as in the file. Lengths are millimeters, angles degrees clockwise on screen, 0 along +x;
 * x runs right and y runs down the page. Every object may have unknown keys, which are preserved and ignored.
 */
import type { Deg, Mm, Shape, Stream, XY } from '../plane/types.ts';
import type { ReportFacts } from './report-facts.ts';
import type {
  Agreement,
  Condition,
  EarlierResult,
  Kit,
  LogEntry,
  Practice,
  QualityCheck,
  RadonUnit,
  Reading,
  Visit,
  WeatherNote,
} from './test-record.ts';

export type { Box, Deg, Mm, Shape, Stream, XY } from '../plane/types.ts';

export type WallSide = 'auto' | 'outside' | 'inside';
export interface Wall {
  readonly id: string;
  /** The center-line. */
  readonly from: XY;
  readonly to: XY;
  readonly thickness: Mm;
  /** False: `thickness` is only the default of new walls and not measured yet. Missing: it is known. */
  readonly thicknessAnswered?: boolean;
  readonly side: WallSide;
}

export const OPENING_KINDS = ['door', 'window', 'passage'] as const;
export type OpeningKind = (typeof OPENING_KINDS)[number];

/** What keeps direct sun out of an opening: a cover that stays closed, a window well, or an overhang and an obstruction outside. */
type Shade = 'covered' | 'well' | PartialShade;
interface PartialShade {
  /** A roof or awning over the whole opening: its depth from the wall, and its height above the head, mm. */
  readonly overhang?: { readonly depth: Mm; readonly above: Mm };
  /** Altitude below which the sun is hidden, degrees. */
  readonly obstruction?: number;
}

/** Whether heights are measured or only the defaults of a new thing. A missing key means measured. */
interface MeasuredHeights {
  /** False: nobody has measured `bottom`. */
  readonly bottomAnswered?: boolean;
  /** False: nobody has measured `top`. */
  readonly topAnswered?: boolean;
}

export interface Opening extends MeasuredHeights {
  readonly id: string;
  /** Id of the wall that contains it. */
  readonly wall: string;
  readonly kind: OpeningKind;
  /** From the wall's `from` end to the near jamb, along the center-line. */
  readonly offset: Mm;
  readonly width: Mm;
  /** Sill and head, above the finished floor. */
  readonly bottom: Mm;
  readonly top: Mm;
  /** Whether it lets light in while closed. Missing: true for a window and a passage, false for a door. */
  readonly glazed?: boolean;
  /** Null or missing: nothing shades it. */
  readonly shade?: Shade | null;
}

export const ROOM_USES_ALLOWED = [
  'family-room',
  'living-room',
  'bedroom',
  'playroom',
  'den',
  'office',
  'exercise-room',
  'workshop',
  'dining-room',
  'unfinished',
] as const;
export const ROOM_USES_BARRED = [
  'kitchen',
  'bathroom',
  'laundry',
  'spa',
  'closet',
  'storage',
  'utility',
  'stair',
  'hall',
  'crawlspace',
  'garage',
] as const;
export const ROOM_USES = [...ROOM_USES_ALLOWED, ...ROOM_USES_BARRED] as const;
export type RoomUse = (typeof ROOM_USES)[number];

/** A name and a use for the room that contains `at`. */
export interface RoomLabel {
  readonly id: string;
  readonly name: string;
  readonly use: RoomUse;
  readonly at: XY;
}

export const FIXTURE_KINDS = [
  'supply-register',
  'return-grille',
  'exhaust-fan',
  'ceiling-fan',
  'portable-fan',
  'window-air-conditioner',
  'air-cleaner',
  'dehumidifier',
  'humidifier',
  'furnace',
  'boiler',
  'water-heater',
  'fireplace',
  'wood-stove',
  'radiator',
  'space-heater',
  'sump-pit',
  'floor-drain',
  'washer',
  'dryer',
  'mitigation-pipe',
] as const;
export type FixtureKind = (typeof FIXTURE_KINDS)[number];

export interface Fixture extends MeasuredHeights {
  readonly id: string;
  readonly kind: FixtureKind;
  readonly name: string;
  readonly shape: Shape;
  readonly bottom: Mm;
  readonly top: Mm;
  readonly stream: Stream | null;
}

/** Furniture, shelves, boxes: anything that stands or hangs in a room. */
export interface PlanObject extends MeasuredHeights {
  readonly id: string;
  readonly name: string;
  readonly shape: Shape;
  readonly bottom: Mm;
  readonly top: Mm;
}

/** A vertical cylinder. */
export interface Detector {
  readonly id: string;
  readonly label: string;
  /** Its axis. */
  readonly at: XY;
  /** Height of its underside above the finished floor. */
  readonly base: Mm;
  readonly radius: Mm;
  readonly tall: Mm;
  /** Detectors with the same text are placed side by side; null for a single one. */
  readonly pair: string | null;
  /** What supports it if no drawn object does: hung from above, or on its own stand. Null or missing: not answered. */
  readonly support?: 'hung' | 'stand' | null;
}

/** A photo or scan under a level, for tracing. No verdict uses it. */
export interface Tracing {
  /** The picture, as a data address. */
  readonly image: string;
  readonly name: string;
  /** In pixels of the picture. */
  readonly width: number;
  readonly height: number;
  /** The middle of the picture. */
  readonly at: XY;
  /** The size of one pixel on the plan. */
  readonly scale: Mm;
  readonly turn: Deg;
  /** 0 to 1. */
  readonly opacity: number;
  readonly shown: boolean;
  readonly locked: boolean;
}

/** Who looked for the subjects of a rule on a level and found none, and when. */
export interface LookedForBy {
  /** A rule in `lookedFor`. */
  readonly rule: string;
  readonly by: string;
  readonly at: string | null;
  /** For "direct-sun": the times of the visit and the place that the confirmation was given for. Missing: not recorded. */
  readonly sun?: SunWord;
}
/** The times, place and north that a confirmation of no direct sun was given for. A value that was not known then is null. */
export interface SunWord {
  readonly start: string | null;
  /** The pick-up, or the planned one. */
  readonly end: string | null;
  readonly latitude: Deg | null;
  readonly longitude: Deg | null;
  readonly north: Deg | null;
}

export type Living = 'lived-in' | 'could-be' | 'no';
export type Ground = 'basement' | 'slab' | 'crawlspace' | 'none';
export interface Level {
  readonly id: string;
  readonly name: string;
  /** 0 is the lowest. */
  readonly order: number;
  /** From floor to ceiling. */
  readonly ceiling: Mm;
  /** False: `ceiling` is only the default of a new level and not measured yet. Missing: it is known. */
  readonly ceilingAnswered?: boolean;
  readonly living: Living;
  /** False: `living` is only the default of a new plan and not answered yet. Missing: answered. */
  readonly livingAnswered?: boolean;
  readonly ground: Ground;
  /** False: `ground` is only the default of a new level and not answered yet. Missing: answered. */
  readonly groundAnswered?: boolean;
  readonly walls: readonly Wall[];
  readonly openings: readonly Opening[];
  readonly rooms: readonly RoomLabel[];
  readonly fixtures: readonly Fixture[];
  readonly objects: readonly PlanObject[];
  readonly detectors: readonly Detector[];
  /**
   * Ids of rules whose subjects were looked for on this level and are not there; "direct-sun": a person confirms that
   * no direct sun reaches the spot. Missing: nothing was looked for.
   */
  readonly lookedFor?: readonly string[];
  readonly lookedForBy?: readonly LookedForBy[];
  readonly tracing?: Tracing;
}

export type Purpose = 'own-household' | 'property-transfer' | 'after-mitigation';
export interface Site {
  readonly label: string;
  /** IANA zone name. */
  readonly timeZone: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** True north, clockwise from straight up the page. */
  readonly north: Deg;
  /** False: `north` is only the default of a new plan: it is not printed, and no direct sun is computed from it. Missing: answered. */
  readonly northAnswered?: boolean;
  /** Altitude of the sun, degrees, below which it does not count. Missing: 3. */
  readonly horizon?: number;
  readonly purpose: Purpose;
  /** False: `purpose` is only the default of a new plan and not answered yet. Missing: answered. */
  readonly purposeAnswered?: boolean;
}

export interface Override {
  readonly rule: string;
  readonly distance: Mm;
  /** The reason; required where the override loosens the rule. */
  readonly note: string;
}
export interface Protocol {
  readonly profile: string;
  readonly overrides: readonly Override[];
}

export interface Plan {
  readonly format: 'stillspot-plan';
  readonly version: 1;
  readonly title: string;
  readonly display: { readonly length: 'feet-inches' | 'metric'; readonly radon: RadonUnit };
  readonly site: Site;
  readonly protocol: Protocol;
  /** The measuring tolerance of sketched distances. */
  readonly tapeTolerance: Mm;
  readonly levels: readonly Level[];
  readonly kit: Kit;
  readonly visit: Visit;
  readonly conditions: readonly Condition[];
  readonly readings: readonly Reading[];
  readonly practice?: Practice;
  readonly log?: readonly LogEntry[];
  readonly weather?: readonly WeatherNote[];
  readonly agreement?: Agreement;
  readonly earlier?: readonly EarlierResult[];
  readonly quality?: readonly QualityCheck[];
  /** Facts that only the report needs. */
  readonly report?: ReportFacts;
}
