// Builds the app, serves the built files and prints the address. PORT and HOST are read from the environment.
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';

const DEFAULT_PORT = 4173;

function wantedPort() {
  const text = process.env.PORT;
  if (!text) return DEFAULT_PORT;
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port;
  throw new Error(`PORT is "${text}". Give a whole number from 0 to 65535, or leave it out for ${DEFAULT_PORT}.`);
}

async function start() {
  ensureDeps();
  const port = wantedPort();
  delete process.env.NODE_ENV; // a developer's setting must not turn this into a slow development build
  const { build, preview } = await import('vite');
  await build({ root: ROOT, logLevel: 'warn' });
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    appType: 'mpa', // a missing file is 404, not the start page
    preview: {
      port,
      host: process.env.HOST || 'localhost',
      strictPort: true,
      open: Boolean(process.stdout.isTTY) && !process.env.CI,
    },
  }).catch((/** @type {Error} */ error) => {
    // The browser keeps plans by address: on another port Plans is empty, so the port is not changed automatically.
    throw new Error(
      `The app could not be served: ${error.message}. Plans are kept for each address, so on another port Plans is empty. ` +
        `End what uses port ${port}, or choose another port: PORT=${port + 1} npm start.`,
    );
  });
  const address = server.resolvedUrls?.local[0] ?? server.resolvedUrls?.network[0];
  process.stdout.write(`Open ${address} in a browser. Ctrl+C stops it.\n`);
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.once(signal, () => void server.close().finally(() => process.exit(0)));
}

await runPlainly(start);
