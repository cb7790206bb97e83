import { useNewVersion } from '../../platform/offline/new-version.ts';
import { later } from '../hooks/later.tsx';

// Not part of the start bundle: there is no newer version at the start.
const NewVersionNews = later(() => import('./new-version-news.tsx').then((part) => part.NewVersionNews));

/** The line that announces a newer version. */
export function NewVersionLine() {
  const version = useNewVersion((state) => state.version);
  return version.state === 'none' ? <p className="unseen" role="status" /> : <NewVersionNews version={version} />;
}
