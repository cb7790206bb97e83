import { useMemo } from 'react';
import { withoutTracings } from '../../../geometry/edit/index.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import type { PictureChoice } from '../../commands/panels.ts';
import { useAppStore } from '../../state/store.ts';
import { megabytes } from '../../storage/picture-file.ts';

/** The question that Save asks about a plan with a picture under a level. */
export function PictureQuestion({ take }: { readonly take: (choice: PictureChoice) => void }) {
  const plan = useAppStore((state) => state.plan);
  const [whole, bare] = useMemo(() => [plan, withoutTracings(plan)].map((each) => writePlan(each).length), [plan]);
  return (
    <>
      <p>
        The file has {megabytes(whole ?? 0)} with the picture that you drew over, and {megabytes(bare ?? 0)} without it.
        Here it stays either way.
      </p>
      <div className="buttons">
        <button type="button" className="button button--main" onClick={() => take('with')}>
          With the picture
        </button>
        <button type="button" className="button" onClick={() => take('without')}>
          Without it
        </button>
      </div>
      <p className="small soft">
        The answer holds until the picture is another one. It stands beside the picture, under Draw.
      </p>
    </>
  );
}
