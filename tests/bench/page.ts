import { type Results, type Scope, sizeInWords } from './conduct.ts';
import { digits } from './figures.ts';
import type { Surroundings } from './surroundings.ts';
import { growthTable, memoryTable, ownTable, repeatsInWords, rivalTable, trialTable } from './tables.ts';
import { ZONE_TOLERANCE } from './task.ts';

/** Returns the page of a run as Markdown. `plot` is the name of the picture file beside it. */
export function speedPage(results: Results, scope: Scope, where: Surroundings, plot: string): string {
  const busy = where.load > where.cores / 2;
  return `# Speed

Written by \`npm run bench\`, not by hand. One run, everything side by side.

- ${where.date}, ${where.processor}, ${where.cores} cores, Node ${where.node}, ${where.libraries.join(', ')}
- ${repeatsInWords(scope)}
- load at the start: ${digits(where.load)}${busy ? '. **The machine was busy with other work: read “least” and “processor” rather than medians and tails.**' : ''}${scope.own.share < 1 ? '\n- **A quick run: the code is hardly warm and the repeats are few; direct sun is followed for 24 h only. No figure here says whether a budget is met.**' : ''}

## How to read it

- Three invented levels: house (5 rooms, 40 features), large (30, 400), huge (300, 5,000). A feature is a door, window, fixture or object.
- “Region” is where the axis of a detector may stand: every zone of the profile taken out of the floor, rings linked, area known.
- “95 of 100” means that 95 of 100 runs took no longer. “Processor” is the median of processor time over all threads; above the clock's
  figure where the collector runs beside. The first runs are thrown away: the code has to be hot, for everyone.
- “Times ours” divides a library's median by Stillspot's; in brackets the same by the least of each, which other work disturbs least.
- The libraries get their work ready made: rooms, and zones as polygons in their own format that reach at most 1/16 in (${ZONE_TOLERANCE} mm) beyond the true
  zone, never within. Their time is the boolean alone, and for WebAssembly copying the zones in. Stillspot makes the zones itself within its time.
  “turf: buffer, union, difference” rounds its zones itself too.
- “Area off” is held against GEOS with zones that it rounds itself, 128 chords to a quarter turn. Below zero, floor is lost: that is the 1/16 in.
  **Above zero, floor is called clear that is not.** Turf's buffer cuts corners off circles, so its zones are too small.
- A library that throws, or has no answer after ${scope.limitMs / 1000} s, is listed as failed with what it said.

## Region of a whole level, beside what else one could use

${scope.rivalSizes.map((size) => `### ${sizeInWords(size)}\n\n${rivalTable(results, size)}`).join('\n\n')}

### Random houses

The same work on ${scope.trials} random furnished houses, a fifth of them made to be awkward: zones that touch exactly, lie on one another or just close a gap.

${trialTable(results)}

## The engine alone

“From nothing” starts at a drawing that the engine has never seen. “One thing moved” takes objects, fixtures, doors, windows and sump pits in turn, with all that
the engine remembers from the step before.

${ownTable(results)}

## How time grows

The same density of things at every size.

![Time against features](${plot})

${growthTable(results)}

A power of 1 is growth in proportion.

## Memory

What lives after everything dead was collected, arrays of numbers included.

${memoryTable(results)}
`;
}
