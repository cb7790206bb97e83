/** Location that the device reports. */
export type DeviceLocation =
  | {
      readonly ok: true;
      /** Degrees north and east, to 4 decimals: a step is 36 ft at most. */
      readonly latitude: number;
      readonly longitude: number;
      /** Accuracy radius that the device reports, m. */
      readonly within: number;
    }
  | { readonly ok: false; readonly why: string };

/** How long the device may search, s, and how old a stored location may be, min. */
const LOOKS_S = 30;
const OLD_MIN = 10;

const OR_TYPED = 'Type latitude and longitude instead, for example from a map.';
const NO_LOCATION = `This browser gives no location here. ${OR_TYPED}`;

/** Messages by the code of the browser's error. */
const REFUSALS: Readonly<Record<number, string>> = {
  1: `The browser did not allow it, so nothing was changed. Allow the location for this page in the browser's settings and press again. ${OR_TYPED}`,
  2: `This device does not know where it is. ${OR_TYPED}`,
  3: `This device did not find out where it is within ${LOOKS_S} s. Try again near a window. ${OR_TYPED}`,
};

/** Asks the device once; the browser asks the user first. Never rejects: a failure is a result with the reason in words. */
export function deviceLocation(): Promise<DeviceLocation> {
  return new Promise((done) => {
    if (!window.isSecureContext || !('geolocation' in navigator)) return done({ ok: false, why: NO_LOCATION });
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        done({ ok: true, latitude: rounded(latitude), longitude: rounded(longitude), within: accuracy }),
      ({ code }) => done({ ok: false, why: REFUSALS[code] ?? NO_LOCATION }),
      { timeout: LOOKS_S * 1000, maximumAge: OLD_MIN * 60_000 },
    );
  });
}

const rounded = (degrees: number): number => Math.round(degrees * 10_000) / 10_000;
