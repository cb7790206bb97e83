/** The apparent position of the sun, seen from a place, degrees. */
interface SunPlace {
  /** From true north, clockwise seen from above. */
  readonly azimuth: number;
  readonly altitude: number;
}

const DEGREES = 180 / Math.PI;
const sin = (degrees: number) => Math.sin(degrees / DEGREES);
const cos = (degrees: number) => Math.cos(degrees / DEGREES);

/** 2000-01-01T12:00Z in milliseconds since 1970. */
const J2000 = Date.UTC(2000, 0, 1, 12);

/**
 * Returns the position of the sun at an instant, in milliseconds since 1970: the low-accuracy theory of Meeus, Astronomical Algorithms
 * (1998), chapters 12, 13 and 25 (0.01°), raised by the refraction of Sæmundsson (chapter 16).
 */
export function sunPlace(instant: number, latitude: number, longitude: number): SunPlace {
  const days = (instant - J2000) / 86_400_000;
  const t = days / 36_525;
  const mean = 280.46646 + t * (36_000.76983 + t * 0.0003032);
  const anomaly = 357.52911 + t * (35_999.05029 - t * 0.0001537);
  const center =
    (1.914602 - t * 0.004817) * sin(anomaly) +
    (0.019993 - t * 0.000101) * sin(2 * anomaly) +
    0.000289 * sin(3 * anomaly);
  const node = 125.04 - 1934.136 * t;
  // With aberration and nutation.
  const apparent = mean + center - 0.00569 - 0.00478 * sin(node);
  const tilt = 23.4392911 - t * 0.0130042 + 0.00256 * cos(node);
  const right = Math.atan2(cos(tilt) * sin(apparent), cos(apparent)) * DEGREES;
  const declination = Math.asin(sin(tilt) * sin(apparent)) * DEGREES;
  const sidereal = 280.46061837 + 360.98564736629 * days + 0.000387933 * t * t - 0.00478 * sin(node) * cos(tilt);
  const hour = sidereal + longitude - right;
  const up = sin(latitude) * sin(declination) + cos(latitude) * cos(declination) * cos(hour);
  const south = cos(hour) * sin(latitude) * cos(declination) - sin(declination) * cos(latitude);
  const west = sin(hour) * cos(declination);
  const altitude = Math.atan2(up, Math.hypot(south, west)) * DEGREES;
  return { azimuth: (Math.atan2(west, south) * DEGREES + 540) % 360, altitude: altitude + refraction(altitude) };
}

function refraction(altitude: number): number {
  const h = Math.max(altitude, -1);
  return 1.02 / 60 / Math.tan((h + 10.3 / (h + 5.11)) / DEGREES);
}
