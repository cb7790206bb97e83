import { type RefObject, useEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { CAMERA_ENDED, type Camera, startCamera } from '../../../platform/bar-code/camera.ts';
import { readBarCode } from '../../../platform/bar-code/picture.ts';
import { useModal } from '../../hooks/use-modal.ts';
import './serial-scanner.css';

const ASKING = 'The browser asks whether the camera may be used.';
const LOOKING = 'Hold the label flat, its bar code across the line. It is read by itself.';
const NOTHING_YET =
  'No bar code is read yet. Go nearer until its bars are sharp, with light on it and no glare, or type the number.';
const NOT_IN_PICTURE =
  'No bar code was found in the picture. Take it flat and near, in good light, or type the number.';
/** Number of frames without a code before the advice is shown: about five seconds. */
const PATIENCE = 30;

interface Props {
  readonly name: string;
  readonly onSerial: (serial: string) => void;
  /** Called when the user wants to type the number instead. */
  readonly onType: () => void;
  readonly onShut: () => void;
}

/** The dialog with the camera picture, until a number is read. The camera runs while the dialog is open. */
export function SerialScanner({ name, onSerial, onType, onShut }: Props) {
  const { ref, shut, events } = useModal(onShut);
  const take = (serial: string) => {
    // Reading a picture is asynchronous: the dialog may be closed now.
    if (!ref.current?.open) return;
    shut();
    onSerial(serial);
  };
  const { video, words, camera, say } = useCamera(take);
  // Rendered in the body: inside the fieldset of the serial numbers, that fieldset would handle its keys.
  return createPortal(
    <dialog ref={ref} className="dialog scanner" aria-labelledby="scanner-title" {...events}>
      <h2 id="scanner-title">Serial number of {name}</h2>
      <div className="scanner__picture" hidden={camera === null && words !== ASKING}>
        <video ref={video} muted playsInline aria-label="What the camera sees" />
      </div>
      <p className="scanner__words" role="status">
        {words}
      </p>
      <div className="buttons">
        {camera?.setLight && <LightButton setLight={camera.setLight} />}
        <PictureButton name={name} onText={(text) => (text ? take(text) : say(NOT_IN_PICTURE))} />
        <button
          type="button"
          className="button"
          onClick={() => {
            shut();
            onType();
          }}
        >
          Type the number
        </button>
        <button type="button" className="button" onClick={shut}>
          Close
        </button>
      </div>
      <p className="small soft">
        The pictures stay on this device, and none is stored. Compare the number with the label.
      </p>
    </dialog>,
    document.body,
  );
}

interface CameraView {
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly words: string;
  /** Null until the camera runs, and if it cannot run. */
  readonly camera: Camera | null;
  readonly say: (words: string) => void;
}

function useCamera(onText: (text: string) => void): CameraView {
  const video = useRef<HTMLVideoElement>(null);
  const [words, say] = useState(ASKING);
  const [camera, setCamera] = useState<Camera | null>(null);
  const newest = useRef(onText);
  newest.current = onText;
  useEffect(() => {
    const { current } = video;
    if (!current) return;
    let isOpen = true;
    let running: Camera | null = null;
    const watch = {
      video: current,
      onText: (text: string) => newest.current(text),
      onNothing: (count: number) => count === PATIENCE && say(NOTHING_YET),
      onEnd: () => {
        setCamera(null);
        say(CAMERA_ENDED);
      },
    };
    void startCamera(watch, () => isOpen).then((started) => {
      if (!isOpen) return;
      if (typeof started === 'string') return say(started);
      running = started;
      setCamera(started);
      say(LOOKING);
    });
    return () => {
      isOpen = false;
      running?.stop();
    };
  }, []);
  return { video, words, camera, say };
}

function LightButton({ setLight }: { readonly setLight: (isOn: boolean) => void }) {
  const [isOn, setOn] = useState(false);
  return (
    <button
      type="button"
      className="button"
      aria-pressed={isOn}
      onClick={() => {
        setLight(!isOn);
        setOn(!isOn);
      }}
    >
      Light
    </button>
  );
}

/** Reads a picture of the label: for a browser without camera access, and for a picture that was taken earlier. */
function PictureButton({ name, onText }: { readonly name: string; readonly onText: (text: string) => void }) {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => picker.current?.click()}>
        Take a picture
      </button>
      <input
        ref={picker}
        type="file"
        accept="image/*"
        capture="environment"
        className="unseen"
        tabIndex={-1}
        aria-label={`Picture of the label of ${name}`}
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = ''; // the same picture can be taken again
          if (file) void readBarCode(file).then(onText);
        }}
      />
    </>
  );
}
