import { checkPlan } from '../../../geometry/check/check-detector.ts';
import { toneOf } from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { aheadIssues } from '../../protocol/timing/ahead.ts';
import type { Ms } from '../../protocol/timing/clock.ts';
import { testHeadline } from '../../protocol/validity/headline.ts';
import { testState } from '../../protocol/validity/test-state.ts';
import { levelPicture } from '../../report/level-picture.ts';
import { firstToShow } from '../../state/first-level.ts';
import { textHash } from '../long-texts.ts';
import type { Sample } from '../samples.ts';
import { change, database } from './database.ts';
import { readWork } from './plans.ts';
import type { PlanPreview, PlanSummary } from './records.ts';

/**
 * Identifies the build by the name of this script's file, which changes with its content, so that the library never shows a verdict that an
 * older build computed.
 */
const EDITION = import.meta.url;

/** Returns the preview of a plan, made and stored when it is first needed; null if the plan cannot be read. */
export async function planPreview(summary: PlanSummary): Promise<PlanPreview | null> {
  const kept = await (await database()).get('looks', summary.id);
  if (kept?.hash === summary.hash && kept.edition === EDITION) return kept;
  const stored = await readWork(summary.id);
  const read = stored && stored.text !== null ? parsePlan(stored.text) : null;
  if (!stored || stored.text === null || !read?.ok) return null;
  const { sunAtOnce } = await import('../../state/direct-sun.ts');
  const shown = sunAtOnce(() => previewOf(read.plan, undefined, Date.now()));
  const look = { id: summary.id, hash: textHash(stored.text), edition: EDITION, ...shown };
  // Not stored while the plan has an event in the future: the state of the test changes when that time comes.
  if (aheadIssues(read.plan, Date.now()).length > 0) return look;
  // A preview that could not be stored is made again next time.
  await change(['looks'], async (write) => void (await write.objectStore('looks').put(look))).catch(() => undefined);
  return look;
}

/** Pictures by file name: a sample never changes while the app is open. */
const samplePictures = new Map<string, string>();

/** Returns the picture of a sample's first level to show; empty if there is none. */
export async function samplePicture({ file, load }: Sample): Promise<string> {
  const made = samplePictures.get(file);
  if (made !== undefined) return made;
  const read = parsePlan(await load());
  const level = read.ok ? firstToShow(read.plan) : undefined;
  if (!read.ok || !level) return '';
  const { sunAtOnce } = await import('../../state/direct-sun.ts');
  const picture = sunAtOnce(() => levelPicture(read.plan, level.id));
  samplePictures.set(file, picture);
  return picture;
}

/** Returns the counts of verdicts, the state of the whole test, and the picture of `level`. */
export function previewOf(
  plan: Plan,
  level: Level | undefined = firstToShow(plan),
  now?: Ms,
): Pick<PlanPreview, 'verdicts' | 'test' | 'picture'> {
  const verdicts = { clear: 0, 'clear-of-drawn': 0, tight: 0, blocked: 0, unknown: 0 };
  const { levels } = checkPlan(plan);
  const test = testHeadline(plan, testState(plan, levels, now)).head;
  for (const { detectors } of levels) for (const report of detectors) verdicts[toneOf(report)] += 1;
  return { verdicts, test, picture: level ? levelPicture(plan, level.id) : '' };
}
