import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { FIRST_INSTANT, LAST_INSTANT, sunPosition } from '../../../geometry/sun/position.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';

describe('the place of the sun', () => {
  it('is that of the worked example of NREL/TP-560-34302 within 0.01°', () => {
    const { azimuth, altitude } = sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786);
    expect(Math.abs(90 - altitude - 50.11162)).toBeLessThan(0.01);
    expect(Math.abs(azimuth - 194.34024)).toBeLessThan(0.01);
  });

  it.each([
    ['10,000 random places and times, above 3°', 10_000, 3, 90],
    // A site may let the sun count down to 0°: refraction raises it from below the true horizon then.
    ['1000 random places and times, from just below 0° to 3°', 1000, -0.05, 3],
  ])('is within 0.02° of another library at %s', (_, count, least, most) => {
    const random = seededRandom(20_261_128);
    let worst = 0;
    for (let n = 0; n < count; ) {
      const instant = FIRST_INSTANT + random() * (LAST_INSTANT - FIRST_INSTANT);
      const [latitude, longitude] = [Math.asin(2 * random() - 1) / RADIANS, 360 * random() - 180];
      const other = another(instant, latitude, longitude);
      if (other.altitude < least || other.altitude > most) continue;
      n++;
      const own = sunPosition(instant, latitude, longitude);
      const turn = ((own.azimuth - other.azimuth + 540) % 360) - 180;
      worst = Math.max(worst, Math.hypot(own.altitude - other.altitude, turn * Math.cos(other.altitude * RADIANS)));
    }
    expect(worst).toBeLessThan(0.02);
  });
});

const RADIANS = Math.PI / 180;

function another(instant: number, latitude: number, longitude: number) {
  const date = new Date(instant);
  const observer = new Observer(latitude, longitude, 0);
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true);
  return Horizon(date, observer, ra, dec, 'normal');
}
