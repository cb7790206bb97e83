import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { isSentToLaboratory } from '../../../protocol/custody/log-entries.ts';
import { pickUpNotAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';

/** The last two instants of every chain of custody, which are the same as under Time. */
export function ToLaboratory({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const { visit, site } = plan;
  if (!isSentToLaboratory(plan)) return null;
  const instant = (key: 'posted' | 'received') => ({
    value: visit[key] ?? null,
    zone: site.timeZone,
    onCommit: (value: string | null) => run((now) => ({ ...now, visit: { ...now.visit, [key]: value } as Visit })),
  });
  const happened = pickUpNotAhead(site.timeZone);
  return (
    <fieldset className="log__all">
      <legend className="log__sub">To the laboratory</legend>
      <div className="fields">
        <InstantField label="Mailed" hint="On the day of the pick-up." {...instant('posted')} refuse={happened} />
        <InstantField label="At the laboratory" hint="As it confirms." {...instant('received')} refuse={happened} />
      </div>
    </fieldset>
  );
}
