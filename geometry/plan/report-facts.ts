/** The part of the plan that only the report of the test needs: addresses, people, laboratory, device. An empty text means not known. */

export interface PostalAddress {
  readonly street: string;
  readonly city: string;
  readonly state: string;
  readonly zip: string;
  readonly county: string;
}

/** A person or firm that receives the report, or issues it. */
export interface Party {
  readonly name: string;
  readonly address: string;
  readonly telephone: string;
  readonly email: string;
  /** The license or certificate number of a firm; empty for a client. */
  readonly license: string;
}

/** The license or certificate of a person named in the log. */
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
  /** What the device is and how it measures, in words. */
  readonly description: string;
  readonly maker: string;
  readonly model: string;
  /** Day of the last calibration of a monitor, "2026-11-26"; empty for a passive detector. */
  readonly calibrated: string;
  /** For a monitor: whether its hourly readings are with the report or how the client gets them, and which hours at the start are left out. */
  readonly hourly?: string;
  /** Last day of use that the maker prints on the device, "2026-11-26". */
  readonly expires: string;
}

/** Whether the house has a mitigation system, and whether it was seen to run. */
export type MitigationSeen = 'none' | 'running' | 'not-running' | 'unknown';

/** Who drew the plan, and when. An empty name or null means not known. */
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
  /** Which areas are finished and which are not, in words, because the uses of rooms do not say so. */
  readonly areas?: string;
  /** The condition of permanent vents: crawl space, combustion air. */
  readonly vents?: string;
  /** People and firms to whom the report may be given. */
  readonly releaseTo?: readonly string[];
}
