/** The part of the plan that only the report of the test needs: addresses, people, laboratory, device. Every text may be empty: not known. */

export interface PostalAddress {
  readonly street: string;
  readonly city: string;
  readonly state: string;
  readonly zip: string;
  readonly county: string;
}

/** A person or firm to whom the report goes, or from whom it comes. */
export interface Party {
  readonly name: string;
  readonly address: string;
  readonly telephone: string;
  readonly email: string;
  /** The license or certificate number of a firm; empty for a client. */
  readonly license: string;
}

/** The license or certificate of a person whom the log names. */
interface PersonalLicense {
  readonly name: string;
  readonly license: string;
}

export interface Laboratory {
  readonly name: string;
  readonly address: string;
  readonly license: string;
  /** Who analyzed the detectors. */
  readonly analyst: string;
  readonly analyzed: string | null;
  readonly reported: string | null;
}

export interface DeviceFacts {
  /** What it is and how it measures, in words. */
  readonly description: string;
  readonly maker: string;
  readonly model: string;
  /** Day of the last calibration of a monitor, "2026-11-26"; empty for a passive detector. */
  readonly calibrated: string;
  /** Of a monitor: whether its hourly readings are with the report or how the client gets them, and which hours at the start are left out. */
  readonly hourly?: string;
  /** Last day of use that the maker prints on it, "2026-11-26". */
  readonly expires: string;
}

/** Whether the house has a mitigation system, and whether it was seen to run. */
export type MitigationSeen = 'none' | 'running' | 'not-running' | 'unknown';

/** Who drew the plan, and when; an empty name and null: not known. */
export interface DrawingFacts {
  readonly by: string;
  readonly at: string | null;
}

export interface ReportFacts {
  readonly drawing?: DrawingFacts;
  readonly address?: PostalAddress;
  readonly houseType?: string;
  readonly client?: Party;
  readonly firm?: Party;
  readonly licenses?: readonly PersonalLicense[];
  readonly laboratory?: Laboratory;
  readonly device?: DeviceFacts;
  readonly mitigation?: { readonly seen: MitigationSeen; readonly note: string };
  /** Which areas are finished and which are not, in words: the uses of rooms alone do not tell it. */
  readonly areas?: string;
  /** The condition of permanent vents: crawl space, combustion air. */
  readonly vents?: string;
  /** People and firms to whom the report may be given. */
  readonly releaseTo?: readonly string[];
}
