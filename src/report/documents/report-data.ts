/** The report of a test for other programs: as JSON and as a table. */
import { capital } from '../../../geometry/messages/index.ts';
import { markedCite } from '../../../geometry/messages/sources.ts';
import { namedDetectors } from '../../protocol/custody/detectors.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { notRecorded } from '../../protocol/required-items/not-recorded.ts';
import { locationJson } from '../../protocol/results/describe-location.ts';
import { locationName, locations } from '../../protocol/results/locations.ts';
import { instantText, msOf } from '../../protocol/timing/clock.ts';
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

/** Returns a row of headings, then a row for each detector; values of its location are repeated in every row. Times are by the clock of the site. */
export function reportTable(content: ReportContent): readonly (readonly (string | number)[])[] {
  const { plan, state, sets, items } = content;
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
  const inZone = (text: string | null) => {
    const at = msOf(text);
    return at === null ? '' : instantText(at, plan.site.timeZone);
  };
  const results = resultRows(content);
  const remarks = [...state.issues.map(issueText), ...state.notes, notRecorded(plan, items).short];
  const rows = locations(plan).flatMap((location) => {
    const index = sets.findIndex(({ set }) => set.detectors[0]?.id === location.detectors[0]?.id);
    const [set, told] = [sets[index], results[index]];
    const holds = told?.validity === 'holds';
    const { meanRounded = null, agreement = '' } = set ? locationJson(set) : {};
    return location.detectors.flatMap((detector) => {
      const recorded = plan.readings.filter((reading) => reading.detector === detector.id);
      // A detector without a result has a row too: nothing that is not known is left out.
      const values = recorded.length > 0 ? recorded : [{ value: '', unit: '', belowLimit: undefined }];
      return values.map(({ value, unit, belowLimit }) => [
        plan.title,
        plan.site.label,
        state.validity,
        capital(locationName({ set: location })),
        names.get(detector.id) ?? detector.id,
        value,
        unit,
        value === '' ? '' : belowWords(belowLimit),
        holds && meanRounded !== null ? meanRounded : '',
        holds ? agreement : '',
        holds ? 'yes' : 'no',
        told?.step ?? '',
        houseStep(content),
        inZone(recordedStart(plan.visit)),
        inZone(plan.visit.end),
        remarks.filter(Boolean).join(' '),
      ]);
    });
  });
  return [head, ...rows];
}

const belowWords = (belowLimit = false): string => (belowLimit ? 'yes' : 'no');
