import { useState } from 'react';
import { counted, listed } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { EarlierResult, RadonUnit } from '../../../../geometry/plan/test-record.ts';
import { detectorLabel } from '../../../protocol/detector-label.ts';
import { earlierDateProblem } from '../../../protocol/results/earlier-results.ts';
import { type Location, locations } from '../../../protocol/results/locations.ts';
import type { EnteredRadon } from '../../../protocol/results/radon-input.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DayField } from '../../fields/day-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { RadonFields } from './radon-fields.tsx';

const TERMS = [
  { value: 'short-term', words: 'short-term' },
  { value: 'long-term', words: 'long-term, over 90 days' },
] as const;

/** Earlier tests that this test follows up. */
export function EarlierTests({ plan }: { readonly plan: Plan }) {
  const earlier = plan.earlier ?? [];
  return (
    <details className="group" open={earlier.length > 0 || undefined}>
      <summary>
        Earlier tests here{' '}
        <span className="soft">{earlier.length === 0 ? 'none' : counted(earlier.length, 'test')}</span>
      </summary>
      <div className="earlier">
        {earlier.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an earlier result has no name of its own
          <EarlierTest key={index} plan={plan} index={index} earlier={each} />
        ))}
        <NewEarlier key={earlier.length} plan={plan} />
      </div>
    </details>
  );
}

interface OneProps {
  readonly plan: Plan;
  readonly index: number;
  readonly earlier: EarlierResult;
}

function EarlierTest({ plan, index, earlier }: OneProps) {
  const run = useAppStore((state) => state.run);
  const put = (results: (before: readonly EarlierResult[]) => readonly EarlierResult[]) =>
    run((now) => ({ ...now, earlier: results(now.earlier ?? []) }));
  const change = (patch: Partial<EarlierResult>) =>
    put((before) => before.map((each, i) => (i === index ? { ...each, ...patch } : each)));
  const name = `earlier test ${index + 1}`;
  return (
    <fieldset className="result">
      <legend>
        <strong>Earlier test {index + 1}</strong>
      </legend>
      <RadonFields
        of={name}
        value={{ ...earlier, belowLimit: false }}
        unit={earlier.unit}
        onEnter={plainly(({ value, unit }) => change({ value, unit }))}
        onUnit={(unit) => change({ unit })}
      />
      <PlaceChoice plan={plan} detector={earlier.detector ?? null} onCommit={(detector) => change({ detector })} />
      <ChoiceField label="Kind of test" value={earlier.term} choices={TERMS} onCommit={(term) => change({ term })} />
      <DayField
        label="Day of its end"
        value={earlier.at}
        zone={plan.site.timeZone}
        hint={earlier.at === null ? 'not known' : earlierDateProblem(plan, earlier)}
        onCommit={(at) => change({ at })}
      />
      <TextField label="Note" value={earlier.note} onCommit={(note) => change({ note })} />
      <button
        type="button"
        className="button"
        aria-label={`Remove ${name}`}
        onClick={() => put((before) => before.filter((_, i) => i !== index))}
      >
        Remove
      </button>
    </fieldset>
  );
}

/** Refuses an empty text, since a button removes an earlier result, and "<", which an earlier result cannot have. */
const plainly = (take: (entered: EnteredRadon) => string | undefined) => (entered: EnteredRadon | null) => {
  if (!entered) return 'A result is needed.';
  if (entered.belowLimit) return 'Enter the limit itself, without "<": the most that it can have been.';
  return take(entered);
};

interface PlaceProps {
  readonly plan: Plan;
  readonly detector: string | null;
  readonly onCommit: (detector: string | null) => void;
}

/** A field for the location of an earlier test. Not shown if the plan has only one location. */
function PlaceChoice({ plan, detector, onCommit }: PlaceProps) {
  const places = locations(plan);
  const here = places.find(({ detectors }) => detectors.some(({ id }) => id === detector));
  if (places.length === 1) return null;
  const choices = [
    { value: '', words: 'not answered' },
    ...places.map((place) => ({ value: firstOf(place), words: `where ${namesOf(place)} was` })),
  ];
  return (
    <ChoiceField
      label="Where it was"
      value={here ? firstOf(here) : ''}
      choices={choices}
      hint={here ? '' : 'Until this is answered it is used for no location: separate locations are never averaged.'}
      onCommit={(id) => onCommit(id || null)}
    />
  );
}

const firstOf = ({ detectors }: Location): string => detectors[0]?.id ?? '';
const namesOf = ({ detectors }: Location): string => listed(detectors.map(detectorLabel));

/** Fields of a new earlier test, which is not stored before it has a result: a test without one would count as zero. */
function NewEarlier({ plan }: { readonly plan: Plan }) {
  const run = useAppStore((state) => state.run);
  const [unit, setUnit] = useState<RadonUnit>(plan.display.radon);
  const add = ({ value, unit: written }: EnteredRadon) =>
    run((now) => {
      const places = locations(now);
      const detector = places.length === 1 && places[0] ? firstOf(places[0]) : null;
      const fresh: EarlierResult = {
        at: null,
        value,
        unit: written,
        term: 'short-term',
        note: '',
        detector,
      };
      return { ...now, earlier: [...(now.earlier ?? []), fresh] };
    });
  return (
    <RadonFields
      of={(plan.earlier ?? []).length === 0 ? 'an earlier test' : 'another earlier test'}
      value={null}
      unit={unit}
      hint="Only where this test follows up an earlier one. The rest is asked once the result is in."
      onEnter={plainly(add)}
      onUnit={setUnit}
    />
  );
}
