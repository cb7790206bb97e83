// Runs stages in parallel lanes, and shows their output as if they had run one after the other.
import { FAILED } from './tally.mjs';

/** @typedef {import('./tally.mjs').Tally} Tally */
/** @typedef {(text: string | Uint8Array) => void} Write */
/** @typedef {{ name: string, run: (write: Write) => Promise<Tally> }} Stage */
/** @typedef {{ name: string, tally: Tally, seconds: number }} Result */

/**
 * Returns a writer for each of `count` programs that print at the same time. The output of the first that has not ended is written at once,
 * that of the others is held back until their turn, so that outputs are not mixed. `flush` writes all that is still held back.
 */
export function inTurn(/** @type {number} */ count, /** @type {Write} */ write) {
  const held = Array.from({ length: count }, () => /** @type {(string | Uint8Array)[]} */ ([]));
  const hasEnded = held.map(() => false);
  let first = 0;
  const release = (/** @type {number} */ index) => {
    for (const text of held[index]?.splice(0) ?? []) write(text);
  };
  return {
    writers: held.map((texts, index) => ({
      /** @type {Write} */
      write: (text) => void (index === first ? write(text) : texts.push(text)),
      end: () => {
        hasEnded[index] = true;
        while (hasEnded[first]) release(++first);
      },
    })),
    flush: () => {
      for (const index of held.keys()) release(index);
    },
  };
}

/**
 * Runs the lanes at the same time and the stages of each lane in order, even if one fails or throws. Returns the
 * results in the order of the lanes.
 * @returns {Promise<Result[]>}
 */
export async function runLanes(
  /** @type {readonly (readonly Stage[])[]} */ lanes,
  /** @type {readonly { write: Write, end: () => void }[]} */ writers,
) {
  let next = 0;
  const inLanes = lanes.map((stages) => stages.map((stage) => ({ stage, writer: writers[next++] })));
  const results = await Promise.all(
    inLanes.map(async (stages) => {
      /** @type {Result[]} */
      const ofLane = [];
      for (const { stage, writer } of stages) {
        if (!writer) throw new Error('Every stage needs a writer.');
        writer.write(`\n== ${stage.name} ==\n`);
        const startedAt = performance.now();
        const tally = await stage.run(writer.write).catch((/** @type {Error} */ error) => {
          writer.write(`${error.stack}\n`);
          return FAILED;
        });
        ofLane.push({ name: stage.name, tally, seconds: (performance.now() - startedAt) / 1000 });
        writer.end();
      }
      return ofLane;
    }),
  );
  return results.flat();
}
