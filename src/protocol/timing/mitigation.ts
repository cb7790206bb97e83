import type { Plan } from '../../../geometry/plan/model.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { DAY } from './clock.ts';
import { isLongTerm } from './exposure-limits.ts';
import { formatDuration, formatInstant } from './format-time.ts';
import { AFTER_MITIGATION_WITHIN, limitWords, MITIGATION_BEFORE, MITIGATION_BEFORE_ITS_TEST } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import type { VisitTimes } from './visit-times.ts';

/** Returns whether there is a mitigation system: drawn, implied by the purpose of the test, recorded as running, or seen for the report. */
export function hasMitigation({ levels, site, visit, report }: Plan): boolean {
  const seen = report?.mitigation?.seen;
  const drawn = levels.some(({ fixtures }) => fixtures.some(({ kind }) => kind === 'mitigation-pipe'));
  return (
    drawn ||
    site.purpose === 'after-mitigation' ||
    visit.mitigationOnSince !== null ||
    seen === 'running' ||
    seen === 'not-running'
  );
}

/** MAH-2019, 7.3.2, and the 30 days apply to the test after mitigation. */
function mitigationSources({ site }: Plan): readonly Source[] {
  if (site.purpose !== 'after-mitigation') return MITIGATION_BEFORE.sources;
  return [...MITIGATION_BEFORE_ITS_TEST.sources, ...AFTER_MITIGATION_WITHIN.sources];
}

/** Returns the check of how long a mitigation system ran before the start; "unknown" if the report contradicts a pass. */
export function mitigationCheck(plan: Plan, times: VisitTimes): TimingCheck {
  const check = runningCheck(plan, times);
  const seen = plan.report?.mitigation?.seen;
  const doubt = seen === undefined ? '' : (SEEN_OTHERWISE[seen] ?? '');
  const passes = check.verdict === 'clear' || check.verdict === 'tight';
  return passes && doubt ? { ...check, verdict: 'unknown', detail: `${check.detail} ${doubt}` } : check;
}

type Seen = NonNullable<NonNullable<Plan['report']>['mitigation']>['seen'];
const SEEN_OTHERWISE: Partial<Readonly<Record<Seen, string>>> = {
  none: 'The report says that there is no system: review both.',
  'not-running': 'The report says that it was seen not running: review both.',
};

function runningCheck(plan: Plan, { mitigation, start }: VisitTimes): TimingCheck {
  const { timeZone } = plan.site;
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'mitigation-system',
    verdict,
    detail,
    sources: mitigationSources(plan),
  });
  if (!hasMitigation(plan)) return check('not-run', 'No mitigation system is drawn or noted.');
  if (start === null)
    return check('unknown', 'The start is not recorded, so the running hours before it are not known.');
  if (mitigation === null) {
    return check(
      'unknown',
      `Since when the system has run is not recorded. It must run by ${formatInstant(start - MITIGATION_BEFORE.duration, timeZone)}.`,
    );
  }
  const ran = start - mitigation;
  if (isLongTerm(plan)) {
    return ran >= 0
      ? check('clear', `The system ran for ${formatDuration(ran)} before the start.`)
      : check('blocked', 'The system was switched on after the start: the test measured the house without it.');
  }
  if (ran < MITIGATION_BEFORE.duration) {
    const wait = formatInstant(mitigation + MITIGATION_BEFORE.duration, timeZone);
    const so = ran >= 0 ? `The system ran for ${formatDuration(ran)}` : 'The system was switched on after the start';
    return check(
      'blocked',
      `${so}, ${limitWords(MITIGATION_BEFORE)} required before the start. Start no earlier than ${wait}.`,
    );
  }
  if (plan.site.purpose === 'after-mitigation' && ran > AFTER_MITIGATION_WITHIN.duration) {
    return check(
      'tight',
      `The system has run for ${Math.floor(ran / DAY)} days. A test after mitigation is usually done within ${AFTER_MITIGATION_WITHIN.duration / DAY}.`,
    );
  }
  return check('clear', `The system ran for ${formatDuration(ran)} before the start.`);
}
