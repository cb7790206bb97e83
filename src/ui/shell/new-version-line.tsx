import { useNewVersion } from '../../platform/offline/new-version.ts';
import { later } from '../hooks/later.tsx';

// There is none at the start.
const NewVersionNews = later(() => import('./new-version-news.tsx').then((part) => part.NewVersionNews));

/** Where a newer version is told. */
export function NewVersionLine() {
  const version = useNewVersion((state) => state.version);
  return version.state === 'none' ? <p className="unseen" role="status" /> : <NewVersionNews version={version} />;
}
