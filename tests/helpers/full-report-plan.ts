import type { Plan } from '../../geometry/plan/model.ts';
import { validTestPlan } from './valid-test-plan.ts';

/** Returns a plan of a finished, valid test for a sale, with everything that a report needs. People and numbers are invented. */
export function fullReportPlan(values: readonly number[] = [4.4, 4.8]): Plan {
  const plan = validTestPlan(values);
  return {
    ...plan,
    title: 'Alder Court 7',
    site: { ...plan.site, label: '7 Alder Court', purpose: 'property-transfer' },
    kit: { ...plan.kit, lot: 'LOT-7' },
    visit: {
      ...plan.visit,
      posted: '2026-03-10T12:00:00-04:00',
      received: '2026-03-12T09:00:00-04:00',
      forecast: { at: '2026-03-07T12:00:00-05:00', source: 'Weather service', sustained: 20, storm: false, note: '' },
    },
    weather: [{ at: '2026-03-08T12:00:00-04:00', text: 'Dry, light wind' }],
    log: plan.levels.flatMap(({ detectors }) =>
      detectors.map(({ id }, i) => ({
        detector: id,
        serial: `CX-10${i}`,
        placedBy: 'Mara Lindqvist',
        fetchedBy: 'Tom Okafor',
        sealed: plan.visit.end,
        tampering: 'none' as const,
        note: '',
        photos: [],
        custody: [],
      })),
    ),
    report: {
      address: { street: '7 Alder Court', city: 'Fernhollow', state: 'IL', zip: '60000', county: 'Reed' },
      houseType: 'Single-family house',
      client: { name: 'Priya Nandakumar', address: '2 Elm Row', telephone: '555-0142', email: '', license: '' },
      firm: { name: 'Lindqvist Testing', address: '9 Mill Road', telephone: '555-0177', email: '', license: 'F-220' },
      licenses: [
        { name: 'Mara Lindqvist', license: 'M-3301' },
        { name: 'Tom Okafor', license: 'M-3302' },
      ],
      laboratory: {
        name: 'Harbor Bench Laboratory',
        address: '',
        license: 'L-88',
        analyst: 'J. Fontaine',
        analyzed: '2026-03-12T10:00:00-04:00',
        reported: '2026-03-12T15:00:00-04:00',
      },
      device: {
        description: 'Activated charcoal with diffusion barrier',
        maker: 'Invented Maker',
        model: 'C-100',
        calibrated: '',
        expires: '2026-12-31',
      },
      mitigation: { seen: 'none', note: '' },
      areas: 'All rooms are finished',
      vents: 'No crawl space; combustion air vent open',
      releaseTo: ['Buyer', 'Agent of the buyer'],
    },
  };
}
