import { useRef } from 'react';
import { openSample } from '../../commands/open-and-save.ts';
import { SAMPLES, type Sample } from '../../storage/samples.ts';
import { PlanPicture } from './plan-picture.tsx';
import { useSamplePicture } from './use-preview.ts';

/** The sample plans that ship with the app. */
export function Samples() {
  return (
    <section className="plan-group" aria-labelledby="samples-heading">
      <h3 id="samples-heading">Sample plans of invented houses</h3>
      <ul className="sample-rows">
        {SAMPLES.map((sample) => (
          <SampleRow key={sample.file} sample={sample} />
        ))}
      </ul>
    </section>
  );
}

/** A sample with its picture. A press opens it. */
function SampleRow({ sample }: { readonly sample: Sample }) {
  const item = useRef<HTMLLIElement>(null);
  const picture = useSamplePicture(sample, item);
  return (
    <li ref={item}>
      <button type="button" className="row sample" onClick={() => void openSample(sample)}>
        <PlanPicture picture={picture ?? undefined} />
        <strong>{sample.title}</strong>
        <span>{sample.shows}</span>
      </button>
    </li>
  );
}
