/**
 * The terms of the project: one for each thing, on screen, on paper, on the command line and in the schema. A test reads every shown text
 * and fails on a word that a term replaces. Names of the file format, ids of rules and keys of `--json` are fixed and exempt.
 */
export interface GlossaryEntry {
  readonly term: string;
  /** Its meaning, in a sentence. */
  readonly means: string;
  /** Words that must not be used for it, in lower case, in each form that could appear. */
  readonly replaces: readonly string[];
  /** Source in which the term is used. */
  readonly source: string;
}

const COMMON = 'common practice, no published source';
const MAH = 'ANSI/AARST MAH-2019';
const MALB = 'ANSI/AARST MALB-2014 with 1/21 revisions';
const MS_QA = 'ANSI/AARST MS-QA-2019';
const EPA = 'EPA guide for home buyers and sellers, in copies';
const ILLINOIS = '32 Ill. Adm. Code 422.130, in copies';

/** In the order of a test: place, time, house, records, result, paper, plans. */
export const GLOSSARY: readonly GlossaryEntry[] = [
  entry(
    'Allowed area',
    'Floor where a detector may be placed by every rule that ran; it is white on the plan.',
    COMMON,
    ['bare paper', 'left white', 'nearest white', 'the white is'],
  ),
  entry('Place a detector', 'To put a detector at its spot and start its exposure.', ILLINOIS, [
    'set a detector',
    'set detector',
    'set one down',
    'might sit',
    'might it sit',
    'may sit',
  ]),
  entry(
    'Exterior, interior',
    'An exterior wall, door or window has the outdoors on one side; an interior one has not.',
    ILLINOIS,
    [
      'outside wall',
      'outside walls',
      'outside door',
      'outside doors',
      'outside window',
      'outside windows',
      'inside wall',
      'inside walls',
    ],
  ),
  entry('Crawl space', 'The low space under a floor, where no detector is placed.', COMMON, [
    'crawlspace',
    'crawlspaces',
  ]),
  entry('Airflow direction', 'Where a register, fan or grille blows.', '25 Pa. Code 240.310', [
    'stream of air',
    'throws toward',
    'air machine',
    'air machines',
  ]),
  entry('Collocated pair', 'Two detectors side by side in one location, for precision and as one result.', MS_QA, [
    'side-by-side pair',
    'side-by-side pairs',
    'twin detectors',
  ]),
  entry('Placed', 'The detector is open at its spot: the exposure starts.', '25 Pa. Code 240.604 to 240.606', [
    'set out',
    'sets out',
    'setting out',
    'put out',
  ]),
  entry('Picked up', 'The detector is closed and taken from its spot: the exposure ends.', `${MAH}, Exh. 2`, [
    'fetch',
    'fetched',
    'fetches',
    'fetching',
  ]),
  entry('Exposure', 'The time between placing and picking up.', '25 Pa. Code 240.604 to 240.606', [
    'laid out',
    'lies out',
    'lay out',
    'lie out',
    'time laid out',
  ]),
  entry('Mailed', 'The sealed detector is on its way to the laboratory.', COMMON, [
    'posted',
    'posting',
    'post it',
    'in the post',
  ]),
  entry(
    'Closed-building conditions',
    'Windows and exterior doors closed on all levels, from 12 h before a test of less than 4 days until the pick-up.',
    `${MAH}, Exh. 2; ${MALB}, 4.1`,
    ['closed house', 'shut house', 'house shut'],
  ),
  entry('Met, not met, not applicable', 'The state of one of the closed-building conditions.', COMMON, [
    'none of it',
    'kept or broken',
  ]),
  entry(
    'Deviation',
    'Something that departs from what the protocol requires; recorded with the result.',
    `${ILLINOIS}; ${MALB}, 8.5.4`,
    ['a break', 'the break', 'breach', 'break of'],
  ),
  entry(
    'Invalid, do not use',
    'No result of the test may be used; the record is kept and the test is repeated.',
    COMMON,
    ['not evaluated', 'does not count', 'is lost', 'does not hold', 'the test holds'],
  ),
  entry('Required', 'What a rule or a protocol asks for.', COMMON, ['asked for by', 'owed']),
  entry('Review', 'Somebody checks the entry before the result is used.', COMMON, [
    'look at both',
    'look again',
    'look at the times',
  ]),
  entry('Completed, required, outstanding', 'Quality measurements done, asked for, and still to do.', MS_QA, [
    'done and owed',
  ]),
  entry('Inspected by', 'Who looked for the subjects of a rule, or walked through the house.', COMMON, [
    'who looks',
    'who looked',
    'who walks',
  ]),
  entry('Verified by', 'Who confirmed that a condition was met.', COMMON, ['who says so', 'who saw it']),
  entry('Evidence of tampering', 'A detector that was moved, covered or opened, or a seal that is broken.', EPA, [
    'somebody was at',
    'not as it was left',
  ]),
  entry('Chain of custody', 'Who had the detector, from its placement to the laboratory.', 'N.J.A.C. 7:28-27.16', [
    'from hand to hand',
    'hand to hand',
    'changed hands',
    'hand-over',
    'hand-overs',
    'handed over',
    'handing over',
  ]),
  entry(
    'Non-interference agreement',
    'What the owner, seller or occupant signs: conditions stay met, detectors stay untouched.',
    `${EPA}; ${MAH}, Exh. 2`,
    ['agreement not to interfere', 'agreement to leave'],
  ),
  entry('Results', 'What the laboratory or the monitor reports, and what follows from it.', COMMON, [
    'the read stage',
    'under read',
  ]),
  entry('Property', 'The house or building that is tested, with its address and location.', COMMON, [
    'owner, site',
    'under site',
  ]),
  entry('Plan sheet', 'The plan on paper: to scale, with distances, checks and sources.', COMMON, [
    'title of the sheet',
  ]),
  entry('Import, remove', 'To bring a file or picture into the app; to take an item off the plan.', COMMON, [
    'take in',
    'taken in',
    'takes in',
    'take away',
    'taken away',
    'bring in',
    'take it away',
  ]),
  entry('In Plans', 'The plan is among the plans of this browser; deleted plans can be restored for 30 days.', COMMON, [
    'on the shelf',
    'the bin',
    'to the bin',
  ]),
  entry('Crosshair, tool', 'The keyboard places items at the crosshair with the tool that is chosen.', COMMON, [
    'the cross',
    'in hand',
    'set down',
    'put down',
  ]),
  entry('Recorded', 'Entered in the plan or its log.', COMMON, ['written down']),
  entry('Correct, fix', 'To put right a deviation, an entry or a drawing.', COMMON, [
    'mend',
    'mended',
    'mends',
    'put right',
  ]),
];

function entry(term: string, means: string, source: string, replaces: readonly string[]): GlossaryEntry {
  return { term, means, replaces, source };
}
