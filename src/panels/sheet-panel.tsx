import { CAUTIONS } from '../../geometry/words.ts';
import { savePicture } from './file-acts.ts';

/** The end of the job: the marked-up sheet as a picture. */
export function SheetPanel() {
  return (
    <>
      <p className="small">
        The picture shows the level in view with its measures, what the rules take away, the detectors, every check and
        the title block.
      </p>
      <button type="button" className="button button--main" onClick={() => void savePicture()}>
        Save the picture
      </button>
      <ul className="fine soft">
        {CAUTIONS.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
