import type { Plan } from '../../../../geometry/plan/model.ts';
import { useAppStore } from '../../../state/store.ts';
import { downloadFile, fileStem } from '../../../storage/plan-files.ts';

/** A button that saves the visit as a calendar file. */
export function CalendarButton({ plan }: { readonly plan: Plan }) {
  const known = plan.visit.start !== null;
  const save = async () => {
    const { calendarText } = await import('../../../protocol/calendar/ics.ts');
    const name = `${fileStem(plan.title)}.ics`;
    downloadFile(name, new Blob([calendarText(plan, Date.now())], { type: 'text/calendar' }));
    useAppStore.getState().say(`${name} is in your downloads. Open it to put the visit in your calendar.`);
  };
  return (
    <>
      <button type="button" className="button" disabled={!known} onClick={() => void save()}>
        Save the visit for a calendar
      </button>
      {!known && <p className="small soft">Write down the start first.</p>}
    </>
  );
}
