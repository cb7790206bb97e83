import type { Plan } from '../../../geometry/plan/model.ts';
import { limitWords, SHORT_TEST } from '../../protocol/timing/limits.ts';
import { describeForecast, needsForecast } from '../../protocol/timing/weather-check.ts';
import { formatAt } from './format-times.ts';

/** Returns the forecast and the weather that was seen, a sentence each. */
export function weatherLines(plan: Plan): readonly string[] {
  return [...forecastLines(plan), ...weatherSeen(plan)];
}

function forecastLines(plan: Plan): readonly string[] {
  const { forecast } = plan.visit;
  return forecast ? [[`${describeForecast(forecast, plan)}.`, forecast.note.trim()].filter(Boolean).join(' ')] : [];
}

/** Returns the forecast from before the start in a sentence; that none is required where that is so; empty where it is missing. */
export function forecastText(plan: Plan): string {
  const [known] = forecastLines(plan);
  return known ?? (needsForecast(plan) ? '' : `Not required of a test of ${limitWords(SHORT_TEST)} or longer`);
}

/** Returns the weather that was noted on site, a sentence each. */
export function weatherSeen(plan: Plan): readonly string[] {
  return (plan.weather ?? []).map(({ at, text }) => `${formatAt(at, plan, 'At a time that is not known')}: ${text}`);
}
