/** The part of the plan that records the test: kit, visit, conditions, results and quality checks. */
export type RadonUnit = 'pCi/L' | 'Bq/m3';
/** A concentration of radon in the air, as reported. */
export interface RadonValue {
  readonly value: number;
  readonly unit: RadonUnit;
}

export interface Kit {
  readonly kind: string;
  readonly minimumHours: number;
  readonly maximumHours: number;
  readonly labDays: number;
  /** False: the hours and days are only the defaults of a new plan. Missing: answered. */
  readonly hoursAnswered?: boolean;
  /** Whether `labDays` was answered. Missing: the same as `hoursAnswered`. */
  readonly labDaysAnswered?: boolean;
  readonly lot?: string;
  readonly detectionLimit?: RadonValue;
}
/** The weather forecast for the exposure. */
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
  /** True: `start` is planned, and nobody has recorded that the detectors were placed then. */
  readonly startPlanned?: boolean;
  /** The actual pick-up. */
  readonly end: string | null;
  /** The planned pick-up. It does not count as done, and `end` takes precedence. */
  readonly plannedEnd?: string | null;
  /** When closed-house conditions ended. */
  readonly closedUntil?: string | null;
  readonly posted?: string | null;
  /** When the laboratory received it. */
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
  /** The laboratory reported it as below its detection limit. */
  readonly belowLimit?: boolean;
  /** As the laboratory reported it, in the same unit. */
  readonly uncertainty?: number;
}

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';
/** Working hours by the clock of the site, "08:30". */
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
/** A transfer of a detector from one person to another (chain of custody). */
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
  /** Recorded at the house as placed, at the start of the visit, which may be before anybody is named. */
  readonly placed?: boolean;
  readonly placedBy: string;
  readonly fetchedBy: string;
  /** When it was sealed again after the exposure. */
  readonly sealed: string | null;
  readonly tampering: 'none' | 'seen' | 'unknown';
  readonly note: string;
  /** Pictures, as data addresses. */
  readonly photos: readonly string[];
  readonly custody: readonly Custody[];
}
export interface WeatherNote {
  readonly at: string | null;
  readonly text: string;
}
/** An agreement not to interfere with the test. */
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
  /** The detector that is at its location now; null or missing where the file does not say. */
  readonly detector?: string | null;
}
/** A quality check of the laboratory: a blank that was never opened, or a spike of known exposure. */
export interface QualityCheck extends RadonValue {
  readonly id: string;
  readonly kind: 'blank' | 'spike';
  readonly at: string | null;
  readonly serial: string;
  readonly by: string;
  /** The known exposure of a spike, in its unit; null for a blank. */
  readonly reference: number | null;
  /** In its unit; null: not known. */
  readonly detectionLimit: number | null;
  readonly note: string;
}
