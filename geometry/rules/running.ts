import type { FixtureKind, Plan } from '../plan/model.ts';

/** The question about the house that asks whether a machine was off; of a window unit, whether it only recirculated. */
export const QUESTION_OF_MACHINE: Partial<Readonly<Record<FixtureKind, string>>> = {
  'ceiling-fan': 'room-machines-off',
  'portable-fan': 'room-machines-off',
  humidifier: 'room-machines-off',
  dehumidifier: 'room-machines-off',
  'air-cleaner': 'room-machines-off',
  'window-air-conditioner': 'window-air-conditioner-recirculating',
};

/** Whether every answer to the question about a machine is that it was kept. Without an answer it was not. */
export function wasKept({ conditions }: Plan, kind: FixtureKind): boolean {
  const answers = conditions.filter(({ item }) => item === QUESTION_OF_MACHINE[kind]);
  return answers.length > 0 && answers.every(({ state }) => state === 'kept');
}

/** Whether a machine was off while the detectors lay out: what is off moves no air, drawn or not. */
export const wasOff = (plan: Plan, kind: FixtureKind): boolean =>
  QUESTION_OF_MACHINE[kind] === 'room-machines-off' && wasKept(plan, kind);
