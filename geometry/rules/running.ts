import type { FixtureKind, Plan } from '../plan/model.ts';

/**
 * The house condition that asks whether a machine was off; for a window air conditioner, whether it only recirculated.
 */
export const QUESTION_OF_MACHINE: Partial<Readonly<Record<FixtureKind, string>>> = {
  'ceiling-fan': 'room-machines-off',
  'portable-fan': 'room-machines-off',
  humidifier: 'room-machines-off',
  dehumidifier: 'room-machines-off',
  'air-cleaner': 'room-machines-off',
  'window-air-conditioner': 'window-air-conditioner-recirculating',
};

/** Returns whether the condition for a machine is recorded and every record says `kept`. False without a record. */
export function wasKept({ conditions }: Plan, kind: FixtureKind): boolean {
  const answers = conditions.filter(({ item }) => item === QUESTION_OF_MACHINE[kind]);
  return answers.length > 0 && answers.every(({ state }) => state === 'kept');
}

/** Returns whether a machine was off during the exposure. A machine that is off moves no air, whether its stream is drawn or not. */
export const wasOff = (plan: Plan, kind: FixtureKind): boolean =>
  QUESTION_OF_MACHINE[kind] === 'room-machines-off' && wasKept(plan, kind);
