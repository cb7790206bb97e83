import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { fontsReady } from './fonts.ts';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');

// A canvas text drawn before its font is there keeps the wrong font, so the first draw waits. A font that fails to
// load must not keep the page blank.
await fontsReady().catch(() => undefined);
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
