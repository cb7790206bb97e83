import { FIXTURE_NOUN } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { bodyDistance, shapeBody } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { QUESTION_OF_MACHINE } from '../../../geometry/rules/running.ts';
import { detectorLabel } from '../detector-label.ts';

/** Machines closer to a detector than 20 ft (6096 mm) are off during the exposure: copies of 32 Ill. Adm. Code 422.130, closed-building list. */
const OFF_WITHIN = 6096;

/** A drawn machine within that distance of a detector, and the checklist item about it. */
export interface NearbyMachine {
  /** Id of the fixture. */
  readonly id: string;
  /** Id of the item of the list. */
  readonly question: string;
  /** "the dehumidifier near A1" */
  readonly description: string;
}

/** Returns the nearby machines of a plan, by level. Distances in plan, from the detector's rim to the machine's body. */
export const machinesNearby = memoize(({ levels }: Plan): readonly NearbyMachine[] =>
  levels.flatMap(({ fixtures, detectors }) =>
    fixtures.flatMap(({ id, kind, name, shape }) => {
      const question = QUESTION_OF_MACHINE[kind];
      if (question === undefined) return [];
      const body = shapeBody(shape);
      const near = detectors.find(({ at: [x, y], radius }) => bodyDistance(body, x, y) - radius < OFF_WITHIN);
      const noun = name.trim() || `the ${FIXTURE_NOUN[kind]}`;
      return near ? [{ id, question, description: `${noun} near ${detectorLabel(near)}` }] : [];
    }),
  ),
);
