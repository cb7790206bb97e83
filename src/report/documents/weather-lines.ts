import type { Plan } from '../../../geometry/plan/model.ts';
import type { WeatherNote } from '../../../geometry/plan/test-record.ts';
import { isBeforeTest } from '../../protocol/custody/weather-notes.ts';
import { msOf } from '../../protocol/timing/clock.ts';
import { limitWords, SHORT_TEST } from '../../protocol/timing/limits.ts';
import { describeForecast, needsForecast } from '../../protocol/timing/weather-check.ts';
import { formatAt } from './format-times.ts';

/** Returns the forecast, then the notes of the weather, a sentence each. */
export function weatherLines(plan: Plan): readonly string[] {
  return [...forecastLines(plan), ...weatherSeen(plan)];
}

function forecastLines(plan: Plan): readonly string[] {
  const { forecast } = plan.visit;
  return forecast ? [[`${describeForecast(forecast, plan)}.`, forecast.note.trim()].filter(Boolean).join(' ')] : [];
}

/** Returns the forecast from before the start as a sentence, or that none is required; empty if a required forecast is missing. */
export function forecastText(plan: Plan): string {
  const [known] = forecastLines(plan);
  return known ?? (needsForecast(plan) ? '' : `Not required of a test of ${limitWords(SHORT_TEST)} or longer`);
}

/** Returns the notes of the weather on site, a sentence each. */
function weatherSeen(plan: Plan): readonly string[] {
  return (plan.weather ?? []).map((note) => sentence(plan, note));
}

/** Returns the notes of the weather as sentences; notes from before the start are not part of the test. */
export function weatherByTime(plan: Plan): { readonly during: string; readonly before: string } {
  const notes = plan.weather ?? [];
  const words = (isEarly: boolean) =>
    notes
      .filter((note) => isBeforeTest(plan, note) === isEarly)
      .map((note) => sentence(plan, note))
      .join(' ');
  return { during: words(false), before: words(true) };
}

function sentence(plan: Plan, { at, text }: WeatherNote): string {
  const [noted, end] = [msOf(at), msOf(plan.visit.end)];
  const late = noted !== null && end !== null && noted > end ? ', after the test' : '';
  return `${formatAt(at, plan, 'At a time that is not known')}${late}: ${text}`;
}
