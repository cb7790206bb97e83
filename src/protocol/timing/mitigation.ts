import type { Plan } from '../../../geometry/plan/model.ts';

/** Whether there is a mitigation system: drawn, named as the reason for the test, or noted as running. */
export function hasMitigation({ levels, site, visit }: Plan): boolean {
  const drawn = levels.some(({ fixtures }) => fixtures.some(({ kind }) => kind === 'mitigation-pipe'));
  return drawn || site.purpose === 'after-mitigation' || visit.mitigationOnSince !== null;
}
