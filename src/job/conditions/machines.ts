import { bodyDistance, shapeBody } from '../../../geometry/body.ts';
import type { FixtureKind, Plan } from '../../../geometry/plan/model.ts';
import { remembered } from '../../../geometry/remembered.ts';
import { FIXTURE_NOUN } from '../../../geometry/words.ts';
import { detectorLabel } from '../readings/set-name.ts';

/** Within 20 ft they are off while a detector lies out: copies of 32 Ill. Adm. Code 422.130, closed-building list. */
const WITHIN = 6096;

/** Machines of a room that the list names: fans, humidifiers, dehumidifiers, air cleaners. */
const MACHINES: readonly FixtureKind[] = ['ceiling-fan', 'portable-fan', 'humidifier', 'dehumidifier', 'air-cleaner'];

/** Each machine drawn within the distance of a detector on its level: "the dehumidifier near A1". In plan, from rim to body. */
export const machinesNearby = remembered(({ levels }: Plan): readonly string[] =>
  levels.flatMap(({ fixtures, detectors }) =>
    fixtures
      .filter(({ kind }) => MACHINES.includes(kind))
      .flatMap(({ kind, name, shape }) => {
        const body = shapeBody(shape);
        const near = detectors.find(({ at: [x, y], radius }) => bodyDistance(body, x, y) - radius < WITHIN);
        return near ? [`${name.trim() || `the ${FIXTURE_NOUN[kind]}`} near ${detectorLabel(near)}`] : [];
      }),
  ),
);
