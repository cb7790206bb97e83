import type { Plan } from '../../../geometry/plan/model.ts';
import type { PlanSummary } from './records.ts';

/** The part of a summary that is read from the plan itself. */
export type Described = Pick<
  PlanSummary,
  'title' | 'place' | 'roomNames' | 'detectorLabels' | 'levels' | 'start' | 'end' | 'visit' | 'readable'
>;

/** Returns what a summary says of a plan, without the facts that its next date depends on: `summaryOf` adds them. */
export function describedPlan(plan: Plan): Described {
  const { title, site, levels, visit } = plan;
  const texts = (all: readonly string[]) => [...new Set(all.map((text) => text.trim()).filter(Boolean))];
  return {
    title: title.trim(),
    place: site.label.trim(),
    roomNames: texts(levels.flatMap(({ rooms }) => rooms.map(({ name }) => name))),
    detectorLabels: texts(levels.flatMap(({ detectors }) => detectors.map(({ label }) => label))),
    levels: levels.length,
    start: visit.start,
    end: visit.end,
    readable: true,
  };
}

/** Summary of a text that could not be read as a plan. */
export const UNREADABLE: Described = {
  title: 'Could not be read',
  place: '',
  roomNames: [],
  detectorLabels: [],
  levels: 0,
  start: null,
  end: null,
  readable: false,
};

/** Returns the title of a plan, or the words shown for an empty title. */
export function titleWords({ title }: Pick<PlanSummary, 'title'>): string {
  return title.trim() || 'No title';
}
