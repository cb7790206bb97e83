/**
 * The plan as the file holds it. Lengths are millimetres, angles degrees clockwise on screen, 0 along +x;
 * x runs right and y runs down the page. Every object may carry further keys: they are kept, never read.
 */
import type { Deg, Mm, Shape, Stream, XY } from '../plane/types.ts';

export type { Box, Deg, Mm, Shape, Stream, XY } from '../plane/types.ts';

export type WallSide = 'auto' | 'outside' | 'inside';
export interface Wall {
  readonly id: string;
  /** The centre-line. */
  readonly from: XY;
  readonly to: XY;
  readonly thickness: Mm;
  readonly side: WallSide;
}

export type OpeningKind = 'door' | 'window' | 'passage';
export interface Opening {
  readonly id: string;
  /** Id of the wall that holds it. */
  readonly wall: string;
  readonly kind: OpeningKind;
  /** From the wall's `from` end to the near jamb, along the centre-line. */
  readonly offset: Mm;
  readonly width: Mm;
  /** Sill and head above the finished floor. */
  readonly bottom: Mm;
  readonly top: Mm;
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

/** A name and a use, pinned to the room that holds `at`. */
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

export interface Fixture {
  readonly id: string;
  readonly kind: FixtureKind;
  readonly name: string;
  readonly shape: Shape;
  readonly bottom: Mm;
  readonly top: Mm;
  readonly stream: Stream | null;
}

/** Furniture, shelves, boxes: whatever stands or hangs in a room. */
export interface PlanObject {
  readonly id: string;
  readonly name: string;
  readonly shape: Shape;
  readonly bottom: Mm;
  readonly top: Mm;
}

/** An upright cylinder. */
export interface Detector {
  readonly id: string;
  readonly label: string;
  /** Its axis. */
  readonly at: XY;
  /** Its underside above the finished floor. */
  readonly base: Mm;
  readonly radius: Mm;
  readonly tall: Mm;
  /** Detectors with the same text are set side by side; null for a single one. */
  readonly pair: string | null;
  /** What carries it where nothing drawn does: hung from above, or on a stand of its own. Null or left out: not said. */
  readonly support?: 'hung' | 'stand' | null;
}

/** A photo or scan that lies under a level, to be drawn over. No verdict looks at it. */
export interface Tracing {
  /** The picture itself, as a data address. */
  readonly image: string;
  readonly name: string;
  /** In pixels of the picture. */
  readonly width: number;
  readonly height: number;
  /** Its middle. */
  readonly at: XY;
  /** One pixel of the picture. */
  readonly scale: Mm;
  readonly turn: Deg;
  /** 0 to 1. */
  readonly opacity: number;
  readonly shown: boolean;
  readonly locked: boolean;
}

/** Who looked for the subjects of a rule on a level, found none, and when. */
export interface LookedForBy {
  /** A rule that `lookedFor` names. */
  readonly rule: string;
  readonly by: string;
  readonly at: string | null;
}

export type Living = 'lived-in' | 'could-be' | 'no';
export type Ground = 'basement' | 'slab' | 'crawlspace' | 'none';
export interface Level {
  readonly id: string;
  readonly name: string;
  /** 0 is the lowest. */
  readonly order: number;
  /** Floor to ceiling. */
  readonly ceiling: Mm;
  readonly living: Living;
  /** False: `living` is what the app began with, and nobody has answered it yet. Left out: it was answered. */
  readonly livingAnswered?: boolean;
  readonly ground: Ground;
  readonly walls: readonly Wall[];
  readonly openings: readonly Opening[];
  readonly rooms: readonly RoomLabel[];
  readonly fixtures: readonly Fixture[];
  readonly objects: readonly PlanObject[];
  readonly detectors: readonly Detector[];
  /**
   * Ids of rules whose subjects were looked for on this level and are not there; "direct-sun": a person vouches that no
   * direct sun reaches the spot. Left out: nothing was looked for.
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
  /** Clockwise from straight up the page to true north. */
  readonly north: Deg;
  readonly purpose: Purpose;
  /** False: `purpose` is what the app began with, and nobody has answered it yet. Left out: it was answered. */
  readonly purposeAnswered?: boolean;
}

export interface Override {
  readonly rule: string;
  readonly distance: Mm;
  /** Why; must not be empty where the override loosens the rule. */
  readonly note: string;
}
export interface Protocol {
  readonly profile: string;
  readonly overrides: readonly Override[];
}

export type RadonUnit = 'pCi/L' | 'Bq/m3';
/** A concentration of radon in the air, as it was reported. */
export interface RadonValue {
  readonly value: number;
  readonly unit: RadonUnit;
}

export interface Kit {
  readonly kind: string;
  readonly minimumHours: number;
  readonly maximumHours: number;
  readonly labDays: number;
  readonly lot?: string;
  readonly detectionLimit?: RadonValue;
}
/** The weather that was forecast for the exposure. */
export interface Forecast {
  readonly at: string | null;
  readonly source: string;
  /** Sustained wind, km/h; null: not noted. */
  readonly sustained: number | null;
  readonly storm: boolean | null;
  readonly note: string;
}
/** RFC 3339 instants with an offset, or null when not known. */
export interface Visit {
  readonly closedSince: string | null;
  readonly mitigationOnSince: string | null;
  readonly start: string | null;
  /** The pick-up that happened. */
  readonly end: string | null;
  /** The pick-up as planned. It never reads as done, and `end` outweighs it. */
  readonly plannedEnd?: string | null;
  /** When the closed house was opened again. */
  readonly closedUntil?: string | null;
  readonly posted?: string | null;
  /** At the laboratory. */
  readonly received?: string | null;
  readonly device?: 'passive' | 'monitor';
  readonly forecast?: Forecast;
}
export type ConditionState = 'kept' | 'broken' | 'not-applicable' | 'unknown';
export interface Condition {
  readonly item: string;
  readonly state: ConditionState;
  readonly at: string | null;
  readonly note: string;
  /** Who confirmed it. */
  readonly by?: string;
}
export interface Reading extends RadonValue {
  readonly detector: string;
  /** The laboratory gave it as below its detection limit. */
  readonly belowLimit?: boolean;
}

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';
/** Hours of work by the clock of the site, "08:30". */
interface WorkingDay {
  readonly day: Weekday;
  readonly from: string;
  readonly to: string;
}
export interface Practice {
  readonly days: readonly WorkingDay[];
  /** "2026-11-26" */
  readonly daysOff: readonly string[];
}
/** A detector goes from one hand to the next. */
export interface Custody {
  readonly at: string | null;
  readonly from: string;
  readonly to: string;
  readonly note: string;
}
/** What happened to one detector. */
export interface LogEntry {
  readonly detector: string;
  readonly serial: string;
  readonly placedBy: string;
  readonly fetchedBy: string;
  /** When it was sealed again after the exposure. */
  readonly sealed: string | null;
  readonly tampering: 'none' | 'seen' | 'unknown';
  readonly note: string;
  /** Pictures as data addresses. */
  readonly photos: readonly string[];
  readonly custody: readonly Custody[];
}
export interface WeatherNote {
  readonly at: string | null;
  readonly text: string;
}
/** Not to interfere with the test. */
export interface Agreement {
  readonly signedBy: string;
  readonly at: string | null;
  readonly refused: boolean;
  readonly note: string;
}
/** A test at the same location that this one follows up. */
export interface EarlierResult extends RadonValue {
  readonly at: string | null;
  readonly term: 'short-term' | 'long-term';
  readonly note: string;
  /** The detector that stands where it was; null or left out where the file does not tell. */
  readonly detector?: string | null;
}
/** A detector sent to the laboratory to try it: a blank that was never opened, or a spike of known exposure. */
export interface QualityCheck extends RadonValue {
  readonly id: string;
  readonly kind: 'blank' | 'spike';
  readonly at: string | null;
  readonly serial: string;
  readonly by: string;
  /** What a spike was exposed to, in its unit; null for a blank. */
  readonly reference: number | null;
  /** In its unit; null: not known. */
  readonly detectionLimit: number | null;
  readonly note: string;
}

export interface Plan {
  readonly format: 'stillspot-plan';
  readonly version: 1;
  readonly title: string;
  readonly display: { readonly length: 'feet-inches' | 'metric'; readonly radon: RadonUnit };
  readonly site: Site;
  readonly protocol: Protocol;
  /** How far a sketched distance may be off. */
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
}
