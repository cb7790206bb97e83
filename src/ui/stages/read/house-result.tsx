import type { Plan } from '../../../../geometry/plan/model.ts';
import { amountsInUnit } from '../../../protocol/results/radon.ts';
import type { HomeStep } from '../../../protocol/validity/home-step.ts';
import { unbrokenResult } from '../../no-break.ts';

/** The one step for the whole house. */
export function HouseSlip({ plan, house }: { readonly plan: Plan; readonly house: HomeStep }) {
  return (
    <section className="set" aria-label="The house" data-step={house.step}>
      <h3>The house</h3>
      <p>{unbrokenResult(amountsInUnit(plan.display.radon, house.text))}</p>
    </section>
  );
}
