import type { LevelModel, OpeningBody } from '../level/types.ts';
import type { Opening } from '../plan/model.ts';

/** Returns whether an opening lets light in while closed. */
function isGlazed({ glazed, kind }: Pick<Opening, 'glazed' | 'kind'>): boolean {
  return glazed ?? kind !== 'door';
}

/** Returns the openings through which direct sun may enter the level and whose sill or head nobody has measured. */
export function unmeasuredGlass(model: Pick<LevelModel, 'openings'>): readonly OpeningBody[] {
  return glazedOpenings(model).filter(({ opening: { shade, bottomAnswered, topAnswered } }) => {
    return shade !== 'covered' && shade !== 'well' && (bottomAnswered === false || topAnswered === false);
  });
}

/** Returns the openings through which direct sun may enter the level. */
export function glazedOpenings({ openings }: Pick<LevelModel, 'openings'>): readonly OpeningBody[] {
  return openings.filter(({ outside, opening }) => outside && isGlazed(opening));
}
