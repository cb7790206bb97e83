import { openSample } from '../../commands/open-and-save.ts';
import { SAMPLES } from '../../storage/samples.ts';

/** The invented houses that come with the app. */
export function Samples() {
  return (
    <section className="board board--samples" aria-labelledby="samples-heading">
      <h3 id="samples-heading">Sample plans of invented houses</h3>
      <ul className="sample-rows">
        {SAMPLES.map((sample) => (
          <li key={sample.file}>
            <button type="button" className="row" onClick={() => void openSample(sample)}>
              <strong>{sample.title}</strong>
              <span>{sample.shows}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
