import { GLOSSARY } from '../../protocol/glossary.ts';

/** The terms of the app, each with its meaning and source. */
export function TermList() {
  return (
    <details>
      <summary>Terms</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section aria-label="Terms" tabIndex={0} className="terms">
        <dl>
          {GLOSSARY.map(({ term, means, source }) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>
                {means} <span className="soft">{source}.</span>
              </dd>
            </div>
          ))}
        </dl>
      </section>
    </details>
  );
}
