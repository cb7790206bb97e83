import { useState } from 'react';
import { type NewVersion, useNewVersion } from '../../platform/offline/new-version.ts';

const SAYS = {
  ready: 'A newer Stillspot is ready. Start it when you are ready; your plan is kept.',
  'runs-elsewhere':
    'A newer Stillspot was started in another tab. This tab continues with the old one until you start it.',
} as const;

const STARTS = 'The newer Stillspot starts. One moment…';

interface Props {
  readonly version: Exclude<NewVersion, { readonly state: 'none' }>;
}

/** Says that a newer version is available. Only the user starts it, since work may be in progress. */
export function NewVersionNews({ version }: Props) {
  const [news, setNews] = useState('');
  return (
    <div className="message" data-message="">
      <p role="status">{news || SAYS[version.state]}</p>
      <button
        type="button"
        className="text-button"
        onClick={() => {
          setNews(STARTS);
          void version.start().then((trouble) => setNews(trouble || STARTS));
        }}
      >
        Start it
      </button>
      <button
        type="button"
        className="text-button"
        onClick={() => useNewVersion.setState({ version: { state: 'none' } })}
      >
        Later
      </button>
    </div>
  );
}
