import { decodeBarCode } from './decode.ts';
import { pixelsOf, SEARCHED } from './pixels.ts';

/** A running camera. */
export interface Camera {
  readonly stop: () => void;
  /** Switches the light of the camera; null if it has none. */
  readonly setLight: ((isOn: boolean) => void) | null;
}

interface Watch {
  readonly video: HTMLVideoElement;
  /** A number was read twice in a row. */
  readonly onText: (text: string) => void;
  /** A frame was searched and no number found; `count` is the number of such frames so far. */
  readonly onNothing: (count: number) => void;
  /** The camera was unplugged or switched off. */
  readonly onEnd: () => void;
}

/** Pause between two frames, ms: the page stays responsive on a phone. */
const REST_MS = 80;

const OR_TYPED = 'Take a picture of the label instead, or type the number.';
const NO_CAMERA = `This browser gives no camera here. ${OR_TYPED}`;
export const CAMERA_ENDED = `The camera was unplugged or switched off. ${OR_TYPED}`;

/** Messages by the name of the browser's error. */
const REFUSALS: Readonly<Record<string, string>> = {
  NotAllowedError: `The browser did not allow the camera. Allow it for this page in the browser's settings, and press Camera again. ${OR_TYPED}`,
  NotFoundError: `No camera was found on this device. ${OR_TYPED}`,
  NotReadableError: `The camera is in use by another program. Close that, and press Camera again. ${OR_TYPED}`,
};

/** Starts the camera on the back of the device and searches its frames. Returns a sentence with the reason if it cannot. */
export async function startCamera(watch: Watch, isStillWanted: () => boolean): Promise<Camera | string> {
  if (!('mediaDevices' in navigator)) return NO_CAMERA;
  let stream: MediaStream;
  try {
    const video = { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } };
    stream = await navigator.mediaDevices.getUserMedia({ video, audio: false });
  } catch (error) {
    return REFUSALS[error instanceof DOMException ? error.name : ''] ?? NO_CAMERA;
  }
  // The user may answer the browser's prompt after leaving the page.
  if (!isStillWanted()) {
    stopTracks(stream);
    return NO_CAMERA;
  }
  return run(stream, watch);
}

const stopTracks = (stream: MediaStream): void => {
  for (const track of stream.getTracks()) track.stop();
};

function run(stream: MediaStream, { video, onText, onNothing, onEnd }: Watch): Camera {
  const [track] = stream.getVideoTracks();
  let timer = 0;
  let isStopped = false;
  let missed = 0;
  let isTurned = false;
  let last = '';
  const stop = () => {
    isStopped = true;
    clearTimeout(timer);
    stopTracks(stream);
    video.srcObject = null;
  };
  const look = () => {
    const size = { width: video.videoWidth, height: video.videoHeight };
    const pixels = pixelsOf(video, size, isTurned, SEARCHED);
    const text = pixels ? decodeBarCode(pixels, 1) : '';
    if (text && text === last) return onText(text);
    last = text;
    if (pixels && !text) {
      missed += 1;
      // A label may be stuck on upright or sideways.
      isTurned = !isTurned;
      onNothing(missed);
    }
    if (!isStopped) timer = window.setTimeout(look, REST_MS);
  };
  track?.addEventListener('ended', () => {
    if (isStopped) return;
    stop();
    onEnd();
  });
  video.srcObject = stream;
  // A browser that blocks autoplay shows the first frame, which is still searched.
  void video.play().catch(() => undefined);
  timer = window.setTimeout(look, REST_MS);
  return { stop, setLight: track ? lightOf(track) : null };
}

/** Returns the switch of the camera's light, since a basement is dark. Not in every browser, and not in the DOM types. */
function lightOf(track: MediaStreamTrack): Camera['setLight'] {
  const abilities = (track.getCapabilities?.() ?? {}) as { readonly torch?: boolean };
  if (!abilities.torch) return null;
  return (isOn) => {
    const wanted: object = { advanced: [{ torch: isOn }] };
    void track.applyConstraints(wanted).catch(() => undefined);
  };
}
