import type { Deg } from '../plane/types.ts';
import { DISC_RADIUS, POSITION_ACCURACY, sunPosition } from './position.ts';

/** Width of a column of the sky, degrees of azimuth: 10 mm at 6 m. */
export const COLUMN: Deg = 0.1;
export const COLUMNS = 3600;

/** Time between computed positions, ms; the path between them is interpolated: 1° of it bends by less than 0.003°. */
const STEP = 240_000;
/** Number of interpolation steps between two computed positions. */
const SUBSTEPS = 10;

/** Radius of the disc at each of these places, degrees, so that together they cover the whole path of the disc. */
const REACH: Deg = DISC_RADIUS + POSITION_ACCURACY + 0.006;

/** From this altitude on, the disc counts with its full height over its whole width. */
const STEEP: Deg = 85;

/** Altitudes between which the disc of the sun passed through a column, degrees. */
interface Band {
  readonly low: Deg;
  readonly high: Deg;
}

/** The bands of each column from true north clockwise, low to high; no two overlap. */
export type Sky = readonly (readonly Band[])[];

export interface Exposure {
  readonly latitude: Deg;
  readonly longitude: Deg;
  /** Milliseconds since 1970. */
  readonly start: number;
  readonly end: number;
}

/**
 * Returns the part of the sky that the disc of the sun passed through between two instants. The whole disc counts while its middle is at
 * `least` or higher. Never too small: the disc is widened by the accuracy of the position, and by up to a column.
 */
export function skyOf({ latitude, longitude, start, end }: Exposure, least: Deg): Sky {
  const builder = new SkyBuilder(least - POSITION_ACCURACY);
  const steps = Math.max(1, Math.ceil((end - start) / STEP));
  for (let i = 0; i <= steps; i++) {
    const { azimuth, altitude } = sunPosition(start + ((end - start) * i) / steps, latitude, longitude);
    builder.moveTo(vectorTo(azimuth, altitude));
  }
  return builder.sky();
}

/** Components east, north and up. */
type Vector = readonly [number, number, number];

const RADIANS = Math.PI / 180;

function vectorTo(azimuth: Deg, altitude: Deg): Vector {
  const across = Math.cos(altitude * RADIANS);
  return [across * Math.sin(azimuth * RADIANS), across * Math.cos(azimuth * RADIANS), Math.sin(altitude * RADIANS)];
}

class SkyBuilder {
  private readonly least: Deg;
  private readonly columns: { low: Deg; high: Deg }[][] = Array.from({ length: COLUMNS }, () => []);
  private last: Vector | null = null;

  constructor(least: Deg) {
    this.least = least;
  }

  /** Adds the path of the disc from the previous position to this one. */
  moveTo(to: Vector): void {
    const from = this.last ?? to;
    this.last = to;
    const floor = Math.sin(this.least * RADIANS);
    const [low, high] = [from[2] - floor, to[2] - floor];
    if (low < 0 && high < 0) return;
    // The part of the path that counts. Halfway, the path is a little higher than its chord, which is the safe side.
    const begin = low < 0 ? low / (low - high) : 0;
    const end = high < 0 ? low / (low - high) : 1;
    for (let i = 0; i <= SUBSTEPS; i++) {
      const share = begin + ((end - begin) * i) / SUBSTEPS;
      this.addDisc(
        from[0] + (to[0] - from[0]) * share,
        from[1] + (to[1] - from[1]) * share,
        from[2] + (to[2] - from[2]) * share,
      );
    }
  }

  sky(): Sky {
    return this.columns.map(joined);
  }

  private addDisc(east: number, north: number, up: number): void {
    const altitude = Math.atan2(up, Math.hypot(east, north)) / RADIANS;
    if (altitude + REACH >= 89.5) {
      for (let i = 0; i < COLUMNS; i++) this.extend(i, altitude - REACH, 90);
      return;
    }
    const azimuth = Math.atan2(east, north) / RADIANS;
    const cosine = Math.cos((altitude + REACH) * RADIANS);
    const half = REACH / cosine;
    for (let i = Math.floor((azimuth - half) / COLUMN); i * COLUMN <= azimuth + half; i++) {
      const off = Math.max(0, i * COLUMN - azimuth, azimuth - (i + 1) * COLUMN) * cosine;
      const reach = altitude > STEEP ? REACH : Math.sqrt(Math.max(0, REACH * REACH - off * off));
      this.extend(((i % COLUMNS) + COLUMNS) % COLUMNS, altitude - reach, altitude + reach);
    }
  }

  private extend(column: number, low: Deg, high: Deg): void {
    const bands = this.columns[column] as { low: Deg; high: Deg }[];
    const last = bands[bands.length - 1];
    if (!last || low > last.high || high < last.low) bands.push({ low, high });
    else {
      if (low < last.low) last.low = low;
      if (high > last.high) last.high = high;
    }
  }
}

function joined(bands: readonly Band[]): readonly Band[] {
  if (bands.length < 2) return bands;
  const sorted = [...bands].sort((a, b) => a.low - b.low);
  const found: { low: Deg; high: Deg }[] = [];
  for (const { low, high } of sorted) {
    const last = found[found.length - 1];
    if (last && low <= last.high) last.high = Math.max(last.high, high);
    else found.push({ low, high });
  }
  return found;
}
