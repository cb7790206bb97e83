import { useState } from 'react';
import { useNewVersion } from '../../platform/offline/new-version.ts';

const SAYS = {
  ready: 'A newer Stillspot is ready. Start it when you are ready; your plan is kept.',
  'runs-elsewhere':
    'A newer Stillspot was started in another tab. This tab continues with the old one until you start it.',
} as const;

/** Says that a newer version is there. It starts when the user says so, never by itself: work may be under way. */
export function NewVersionLine() {
  const version = useNewVersion((state) => state.version);
  const [trouble, setTrouble] = useState('');
  if (version.state === 'none') return <p className="unseen" role="status" />;
  return (
    <div className="message" data-message="">
      <p role="status">{trouble || SAYS[version.state]}</p>
      <button type="button" className="text-button" onClick={() => void version.start().then(setTrouble)}>
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
