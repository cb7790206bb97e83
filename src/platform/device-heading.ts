/** Direction of the top of the screen by the compass of the device. */
export type DeviceHeading =
  /** Degrees clockwise from magnetic north. */
  { readonly ok: true; readonly heading: number } | { readonly ok: false; readonly why: string };

/** How long to wait for readings, ms, and how many are averaged. */
const WAIT_MS = 6000;
const ENOUGH = 5;
/** The device counts as flat up to this tilt, degrees. */
const FLAT = 35;

const OR_ELSE = 'Nothing was changed: turn N on the compass rose, or find north by a street or by the sun.';
const NONE = `This device gives no compass here. ${OR_ELSE}`;
const TILTED = `The device was not flat. Hold it flat and press again. ${OR_ELSE}`;
const REFUSED = `The browser did not allow it. ${OR_ELSE}`;

type Reading = DeviceOrientationEvent & { readonly webkitCompassHeading?: number };
type Asking = { readonly requestPermission?: () => Promise<string> };

/** Reads the compass of the device; some browsers ask the user first. Never rejects: a failure is a result with the reason in words. */
export async function deviceHeading(): Promise<DeviceHeading> {
  if (!window.isSecureContext || !('DeviceOrientationEvent' in window)) return { ok: false, why: NONE };
  const { requestPermission } = DeviceOrientationEvent as unknown as Asking;
  if (requestPermission) {
    const answer = await requestPermission.call(DeviceOrientationEvent).catch(() => 'denied');
    if (answer !== 'granted') return { ok: false, why: REFUSED };
  }
  return read();
}

function read(): Promise<DeviceHeading> {
  return new Promise((done) => {
    const headings: number[] = [];
    let wasTilted = false;
    const end = (result: DeviceHeading) => {
      clearTimeout(timer);
      for (const name of EVENTS) window.removeEventListener(name, take);
      done(result);
    };
    const take = (event: Event) => {
      const heading = headingOf(event as Reading);
      if (heading === null) return;
      if (heading === 'tilted') {
        wasTilted = true;
        return;
      }
      headings.push(heading);
      if (headings.length === ENOUGH) end({ ok: true, heading: meanOf(headings) });
    };
    const timer = setTimeout(() => end({ ok: false, why: wasTilted ? TILTED : NONE }), WAIT_MS);
    for (const name of EVENTS) window.addEventListener(name, take);
  });
}

const EVENTS = ['deviceorientationabsolute', 'deviceorientation'] as const;

/** Returns degrees clockwise from magnetic north; null for a reading that is not relative to north. */
function headingOf(event: Reading): number | 'tilted' | null {
  const { alpha, beta, gamma, absolute, webkitCompassHeading } = event;
  const own = webkitCompassHeading ?? (absolute && alpha !== null ? 360 - alpha : null);
  if (own === null) return null;
  if (Math.abs(beta ?? 0) > FLAT || Math.abs(gamma ?? 0) > FLAT) return 'tilted';
  // In landscape the top of the screen is another side of the device.
  return (own + (screen.orientation?.angle ?? 0)) % 360;
}

/** Returns the circular mean: that of 359° and 1° is 0°. */
function meanOf(degrees: readonly number[]): number {
  const sum = (part: (radians: number) => number) =>
    degrees.reduce((total, each) => total + part((each * Math.PI) / 180), 0);
  return ((Math.atan2(sum(Math.sin), sum(Math.cos)) * 180) / Math.PI + 360) % 360;
}
