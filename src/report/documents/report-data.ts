/** The report of a test for other programs: as JSON and as a table. */
import { markedCite } from '../../../geometry/messages/sources.ts';
import { namedDetectors } from '../../protocol/custody/detectors.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { locationJson } from '../../protocol/results/describe-location.ts';
import { issueText } from '../../protocol/validity/validity.ts';
import { houseStep, type ReportContent, resultRows, STATEMENTS } from './report-content.ts';

/** Returns the report as an object for JSON. Instants are RFC 3339. */
export function reportJson(content: ReportContent) {
  const { plan, state, sets, house, items } = content;
  return {
    title: plan.title,
    site: plan.site.label,
    test: state.validity,
    reasons: state.issues.map(issueText),
    notes: state.notes,
    sets: sets.map(locationJson),
    house: house.step,
    houseStep: house.text,
    visit: plan.visit,
    missing: items
      .filter(({ state: of }) => of === 'missing')
      .map(({ item, lacking }) => ({
        id: item.id,
        item: item.name,
        lacking,
        lists: item.sources.map(markedCite),
      })),
    items: items.map(({ item, state: of }) => ({ id: item.id, state: of })),
    statements: STATEMENTS,
  };
}

/** Returns a row of headings, then a row for each detector; values of its location are repeated in every row. */
export function reportTable(content: ReportContent): readonly (readonly (string | number)[])[] {
  const { plan, state, sets } = content;
  const names = new Map(namedDetectors(plan).map(({ id, name }) => [id, name]));
  const head = [
    'title',
    'site',
    'test',
    'location',
    'detector',
    'value',
    'unit',
    'below limit',
    'mean pCi/L',
    'agreement',
    'location holds',
    'next step',
    'next step for the building',
    'start',
    'end',
    'remarks',
  ];
  const rows = resultRows(content).flatMap(({ location, step, validity }, index) => {
    const set = sets[index];
    if (!set) return [];
    const holds = validity === 'holds';
    const { meanRounded, agreement } = locationJson(set);
    return set.set.recorded.map(({ detector, value, unit, belowLimit }) => {
      return [
        plan.title,
        plan.site.label,
        state.validity,
        location,
        names.get(detector) ?? detector,
        value,
        unit,
        belowLimit ? 'yes' : 'no',
        holds && meanRounded !== null ? meanRounded : '',
        holds ? agreement : '',
        holds ? 'yes' : 'no',
        step,
        houseStep(content),
        recordedStart(plan.visit) ?? '',
        plan.visit.end ?? '',
        state.notes.join(' '),
      ];
    });
  });
  return [head, ...rows];
}
