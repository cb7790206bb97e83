import zoneAt from '@photostructure/tz-lookup';
import { DAY, type Ms, wallTime } from '../protocol/timing/clock.ts';

/** The time zone of a place. */
export interface PlaceZone {
  /** IANA name. */
  readonly zone: string;
  /** Whether a zone with another time is near, so that the place may be in that zone. */
  readonly isDoubtful: boolean;
}

/** Largest error of the coarse map of zones, degrees of latitude: 45 km. */
const COARSE = 0.4;
/** Number of directions in which nearby zones are looked for. */
const AROUND = 8;
const NEAREST_SHARE = 0.5;

/**
 * Returns the time zone of a place, degrees north and east, for the year from `now` on. The zone of the plan, `own`, is kept if it has the
 * same time as one of those near the place: at a border of zones the user knows better than the map. Null if this computer knows no zone.
 */
export function zoneOfPlace(latitude: number, longitude: number, own: string, now: Ms): PlaceZone | null {
  const zones = zonesAround(latitude, longitude).filter(isKnown);
  const [zone] = zones;
  if (zone === undefined) return null;
  const clocks = zones.map((each) => clockOf(each, now));
  const isOwn = isKnown(own) && clocks.includes(clockOf(own, now));
  return { zone: isOwn ? own : zone, isDoubtful: !isOwn && new Set(clocks).size > 1 };
}

/** Returns the zones at a place and around it, its own first. */
function zonesAround(latitude: number, longitude: number): readonly string[] {
  const zones = [zoneAt(latitude, longitude)];
  const widen = 1 / Math.max(0.05, Math.cos((latitude * Math.PI) / 180));
  for (const share of [NEAREST_SHARE, 1]) {
    for (let i = 0; i < AROUND; i++) {
      const turn = (2 * Math.PI * i) / AROUND;
      const north = latitude + COARSE * share * Math.cos(turn);
      const east = longitude + COARSE * share * widen * Math.sin(turn);
      if (Math.abs(north) > 90) continue;
      zones.push(zoneAt(north, ((east + 540) % 360) - 180));
    }
  }
  // Zones at sea are named by their offset; as neighbors they say nothing about the land.
  const [first, ...around] = zones as [string, ...string[]];
  return [...new Set([first, ...around.filter((zone) => !zone.startsWith('Etc/'))])];
}

/** Returns the UTC offsets of a zone through a year, as a text to compare. */
const clockOf = (zone: string, now: Ms): string =>
  Array.from({ length: 12 }, (_, month) => wallTime(now + month * 30 * DAY, zone).offset).join(' ');

function isKnown(zone: string): boolean {
  try {
    wallTime(0, zone);
    return true;
  } catch {
    return false;
  }
}
