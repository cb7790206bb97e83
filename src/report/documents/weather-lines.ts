import type { Plan } from '../../../geometry/plan/model.ts';
import { describeForecast } from '../../protocol/timing/weather-check.ts';
import { formatAt } from './format-times.ts';

/** Returns the forecast and the weather that was seen, a sentence each. */
export function weatherLines(plan: Plan): readonly string[] {
  const { forecast } = plan.visit;
  const forecasts = forecast
    ? [[`${describeForecast(forecast, plan)}.`, forecast.note.trim()].filter(Boolean).join(' ')]
    : [];
  const seen = (plan.weather ?? []).map(
    ({ at, text }) => `${formatAt(at, plan, 'At a time that is not known')}: ${text}`,
  );
  return [...forecasts, ...seen];
}
