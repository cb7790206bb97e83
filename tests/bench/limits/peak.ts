import { readdirSync, readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';

/** Time between two looks, ms. */
const EVERY = 50;

/**
 * Returns the most memory, bytes, that the pages of a browser held in one process during some work. Linux only: reads what the system
 * knows of each process.
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

/** The highest that the process ever was (VmHWM); 0 for one that has ended. */
function heldBy(id: number): number {
  if (!readdirSync('/proc').includes(String(id))) return 0;
  try {
    const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1];
    return Number(kilobytes ?? 0) * 1024;
  } catch {
    return 0;
  }
}
