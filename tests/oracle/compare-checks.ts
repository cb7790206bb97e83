import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector } from '../../geometry/plan/model.ts';
import type { OracleBody } from './bodies.ts';
import { depthInFloor, isLevelToTest, labelsOf, type OracleLevel, roomAt, verdictOfUse } from './geos-oracle.ts';
import { isCarried, type OracleRow, oracleRows, SHORTFALL } from './rules.ts';
import type { Tally } from './tally.ts';

/** Tolerance for distances, mm: both sides compute in doubles from the same drawing. A tenth of the shortfall that is allowed. */
export const CLOSE = 0.01;
/** Within this distance of a limit, mm, either verdict is right. */
const EDGE = 1e-5;

type Verdict = DetectorReport['verdict'];
const WORST_FIRST: readonly Verdict[] = ['blocked', 'unknown', 'tight', 'clear'];

/** Returns the differences between the engine's report on a detector and the oracle's rows, in words; empty when they agree. */
export function compareChecks(oracle: OracleLevel, model: LevelModel, detector: Detector, tally: Tally): string[] {
  const report = checkDetector(oracle.plan, model, detector);
  const rows = oracleRows(oracle, detector);
  const wrong: string[] = [];
  const rules = new Set([...rows.map(({ rule }) => rule), ...report.checks.map(({ rule }) => rule)]);
  for (const rule of rules) {
    if (WORDED.includes(rule)) continue;
    const got = report.checks.filter((check) => check.rule === rule && check.measured !== null);
    const want = rows.filter((row) => row.rule === rule);
    wrong.push(...compareRule(oracle, detector, got, want, tally).map((text) => `${detector.id} ${rule} ${text}`));
  }
  const worded = wordedVerdicts(oracle, detector, rows);
  for (const { rule, allowed } of worded) {
    const got = report.checks.filter((check) => check.rule === rule);
    const ok = got.every(({ verdict }) => allowed.includes(verdict)) && got.length === (allowed.length > 0 ? 1 : 0);
    if (!ok) wrong.push(`${detector.id} ${rule}: ${got.map(({ verdict }) => verdict)}, not ${allowed.join(' or ')}`);
    tally.verdicts++;
  }
  return [...wrong, ...compareWhole(oracle, detector, report)];
}

/** Rules without a distance. A companion rule without a companion is checked in `wordedVerdicts`. */
const WORDED: readonly string[] = ['room-use', 'level', 'direct-sun', 'support'];

/** Rules that are not run where none of their subjects is drawn and nobody looked for them. */
const LOOKED_FOR = ['outside-opening', 'moving-air', 'heat', 'sump', 'floor-drain'];

function compareRule(
  oracle: OracleLevel,
  detector: Detector,
  got: readonly Check[],
  want: readonly OracleRow[],
  tally: Tally,
): string[] {
  const wrong: string[] = [];
  const { tapeTolerance } = oracle.plan;
  const leastOf = (rows: readonly OracleRow[]) => Math.min(...rows.map(({ margin }) => margin));
  const [least, leastBody] = [leastOf(want), leastOf(want.filter(({ stream }) => !stream))];
  const paired = new Set<OracleRow>();
  for (const check of got) {
    const row = want.find((one) => !paired.has(one) && isSame(check, one));
    if (!row) {
      wrong.push(`${naming(check)}: no such row; there are ${want.map(naming).join(', ')}`);
      continue;
    }
    paired.add(row);
    wrong.push(...compareRow(check, row, tapeTolerance, tally));
    if (!isWitness(check, row, detector))
      wrong.push(`${naming(check)}: the line ${JSON.stringify(check.witness)} is not it`);
    if (check.verdict === 'clear' && row.margin > (row.stream ? least : leastBody) + CLOSE)
      wrong.push(`${naming(check)}: clear and not the nearest`);
  }
  for (const row of want) {
    const allowed = allowedFor(row, tapeTolerance);
    if (!paired.has(row) && !allowed.includes('clear')) wrong.push(`${naming(row)}: left out, should be ${allowed}`);
  }
  if (want.length > 0 && got.length === 0) wrong.push('has no row at all');
  const isNearest = ({ stream, margin }: OracleRow) => !stream && margin <= leastBody + CLOSE;
  if (want.some(isNearest) && ![...paired].some(isNearest)) wrong.push('has no row for the nearest body');
  return wrong;
}

function compareRow(check: Check, row: OracleRow, tapeTolerance: number, tally: Tally): string[] {
  const off = Math.abs((check.measured ?? Number.NaN) - row.measured);
  const allowed = allowedFor(row, tapeTolerance);
  tally.rows++;
  tally.verdicts++;
  if (allowed.length > 1) tally.onTheEdge++;
  if (off > tally.worstDistance) Object.assign(tally, { worstDistance: off, worstDistanceAt: `${naming(row)}` });
  const wrong: string[] = [];
  if (!(off <= CLOSE)) wrong.push(`${naming(check)}: measured ${check.measured}, not ${row.measured}`);
  if (!(Math.abs((check.margin ?? Number.NaN) - row.margin) <= CLOSE))
    wrong.push(`${naming(check)}: margin ${check.margin}`);
  if (!allowed.includes(check.verdict)) wrong.push(`${naming(check)}: ${check.verdict}, not ${allowed}; ${row.margin}`);
  return wrong;
}

/**
 * Returns whether the drawn line is right: from the rim (from the axis, if the rim is over the body) straight to the nearest point of the
 * body. Inside a stream any line is accepted.
 */
function isWitness({ witness }: Check, { bodies }: OracleRow, { at: [x, y], radius }: Detector): boolean {
  if (!witness) return bodies.length === 0;
  const { rim, subject } = witness;
  const toRim = Math.hypot(rim[0] - x, rim[1] - y);
  const long = Math.hypot(subject[0] - rim[0], subject[1] - rim[1]);
  const fits = ({ distance, stream }: OracleBody) => {
    const away = distance(x, y);
    if (stream && away < radius) return true;
    const [out, length] = away > radius ? [radius, away - radius] : [0, away];
    return distance(...subject) <= CLOSE && Math.abs(toRim - out) <= CLOSE && Math.abs(long - length) <= CLOSE;
  };
  return bodies.length === 0 || bodies.some(fits);
}

function isSame(check: Check, row: OracleRow): boolean {
  if (check.subject !== row.subject || Math.abs((check.required ?? Number.NaN) - row.required) > 1e-6) return false;
  return row.rule !== 'moving-air' || row.stream === check.reason.includes('Its airflow.');
}

function naming({ subject, required }: { readonly subject: string | null; readonly required: number | null }): string {
  return `${subject} (needs ${required})`;
}

/** Returns blocked below the limit, tight within the tape tolerance, else clear; two verdicts if the margin is within rounding of a limit. */
function verdictsOf(margin: number, tapeTolerance: number): Verdict[] {
  const at = (value: number): Verdict => {
    if (value < -SHORTFALL) return 'blocked';
    return value < tapeTolerance ? 'tight' : 'clear';
  };
  return [...new Set([at(margin - EDGE), at(margin), at(margin + EDGE)])];
}

function allowedFor({ blocked, margin }: OracleRow, tapeTolerance: number): Verdict[] {
  return blocked ? ['blocked'] : verdictsOf(margin, tapeTolerance);
}

interface Worded {
  readonly rule: string;
  /** Each of these is right; an empty list means that the rule has no row. */
  readonly allowed: readonly Verdict[];
}

function wordedVerdicts(oracle: OracleLevel, detector: Detector, rows: readonly OracleRow[]): Worded[] {
  const looked = (rule: string) => oracle.level.lookedFor?.includes(rule) ?? false;
  const lonely = detector.pair !== null && !rows.some(({ rule }) => rule === 'companion');
  return [
    { rule: 'room-use', allowed: roomVerdicts(oracle, detector) },
    { rule: 'level', allowed: [isLevelToTest(oracle.plan, oracle.level) ? 'clear' : 'blocked'] },
    { rule: 'direct-sun', allowed: [looked('direct-sun') || !oracle.hasOutsideOpening ? 'clear' : 'unknown'] },
    { rule: 'support', allowed: [isCarried(oracle.level, detector) ? 'clear' : 'unknown'] },
    ...LOOKED_FOR.filter((rule) => !rows.some((row) => row.rule === rule)).map((rule) => {
      return { rule, allowed: [looked(rule) ? ('clear' as const) : ('unknown' as const)] };
    }),
    ...(lonely ? [{ rule: 'companion', allowed: ['unknown'] as const }] : []),
  ];
}

/** Returns the allowed verdicts. An axis on the edge of a floor may be in the room or the wall; a rim short by exactly 0.1 mm may pass or not. */
function roomVerdicts(oracle: OracleLevel, { at: [x, y], radius }: Detector): Verdict[] {
  const room = roomAt(oracle, x, y);
  const edge = Math.min(...oracle.walls.rooms.map((one) => depthInFloor(oracle, one, x, y)));
  if (edge < EDGE) return ['blocked', 'unknown', 'clear'];
  const use = verdictOfUse(oracle, room);
  // A rim that reaches into a wall is blocked, whatever the use of the room.
  if (use === 'blocked') return [use];
  const spare = depthInFloor(oracle, room, x, y) - radius + SHORTFALL;
  if (Math.abs(spare) < EDGE) return ['blocked', use];
  return [spare < 0 ? 'blocked' : use];
}

/** Checks the overall verdict, which is the worst of its rows, and the room, which is the one that contains the axis. */
function compareWhole(oracle: OracleLevel, detector: Detector, { verdict, room, checks }: DetectorReport): string[] {
  const wrong: string[] = [];
  const open = ['direct-sun', 'support', ...LOOKED_FOR];
  const counted = checks
    .filter((check) => !(open.includes(check.rule) && check.verdict === 'unknown'))
    .map((check) => check.verdict);
  const worst = WORST_FIRST.find((one) => counted.includes(one)) ?? 'clear';
  if (verdict !== worst) wrong.push(`${detector.id} as a whole: ${verdict}, not ${worst}`);
  const [x, y] = detector.at;
  const home = roomAt(oracle, x, y);
  const edge = Math.min(...oracle.walls.rooms.map((one) => depthInFloor(oracle, one, x, y)));
  const label = home ? (labelsOf(oracle, home)[0]?.id ?? null) : null;
  if (edge > EDGE && room !== label) wrong.push(`${detector.id} stands in ${room}, not in ${label}`);
  return wrong;
}
