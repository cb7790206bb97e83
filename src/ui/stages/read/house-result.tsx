import type { Plan } from '../../../../geometry/plan/model.ts';
import { unbrokenFigures } from '../../../../geometry/units/no-break.ts';
import { amountsInUnit } from '../../../protocol/results/radon.ts';
import type { HomeStep } from '../../../protocol/validity/home-step.ts';

/** The next step for the whole house. */
export function HouseResult({ plan, house }: { readonly plan: Plan; readonly house: HomeStep }) {
  return (
    <section className="set" aria-label="The house" data-step={house.step}>
      <h3>The house</h3>
      <p>{unbrokenFigures(amountsInUnit(plan.display.radon, house.text))}</p>
    </section>
  );
}
