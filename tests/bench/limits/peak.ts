import { readdirSync, readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';

/** Time between two samples, ms. */
const EVERY = 50;

/**
 * Returns the peak memory, bytes, of a renderer or GPU process of a browser during some work. Linux only: reads `/proc`.
 */
export async function peakOf(browser: Browser, work: () => Promise<void>): Promise<number> {
  const cdp = await browser.newBrowserCDPSession();
  const pagesOf = async () => {
    const { processInfo } = await cdp.send('SystemInfo.getProcessInfo');
    return processInfo.filter(({ type }) => type === 'renderer' || type === 'GPU').map(({ id }) => id);
  };
  let most = 0;
  let ended = false;
  const watch = (async () => {
    while (!ended) {
      for (const id of await pagesOf()) most = Math.max(most, heldBy(id));
      await new Promise((next) => setTimeout(next, EVERY));
    }
  })();
  try {
    await work();
  } finally {
    ended = true;
    await watch;
    await cdp.detach();
  }
  return most;
}

/** Peak resident memory of a process (VmHWM), bytes; 0 if it has ended. */
function heldBy(id: number): number {
  if (!readdirSync('/proc').includes(String(id))) return 0;
  try {
    const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1];
    return Number(kilobytes ?? 0) * 1024;
  } catch {
    return 0;
  }
}
