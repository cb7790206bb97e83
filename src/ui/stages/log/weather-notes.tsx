import { useState } from 'react';
import { describeSources } from '../../../../geometry/messages/sources.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { withoutWeatherNote, withWeatherNote } from '../../../protocol/custody/log-entries.ts';
import {
  chronologicalWeather,
  WEATHER_TO_NOTE,
  WEATHER_TO_NOTE_SOURCES,
} from '../../../protocol/custody/weather-notes.ts';
import { notAhead } from '../../../protocol/timing/refused-times.ts';
import { useAppStore } from '../../../state/store.ts';
import { InstantField } from '../../fields/instant-field.tsx';
import { TextField } from '../../fields/text-field.tsx';

/** What the weather was like during the test. */
export function WeatherNotes({ plan }: { readonly plan: Plan }) {
  const notes = chronologicalWeather(plan);
  return (
    <details className="group log">
      <summary>
        Weather <span className="soft">{notes.length > 0 ? `${notes.length} noted` : 'nothing noted'}</span>
      </summary>
      <ul className="log__lines">
        {notes.map(({ note, index, when }) => (
          <WeatherLine key={index} text={note.text} when={when} index={index} />
        ))}
      </ul>
      <div className="small log__to-note">
        <p>To be noted:</p>
        <ul>
          {WEATHER_TO_NOTE.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
        <p className="fine soft">{describeSources(WEATHER_TO_NOTE_SOURCES)}</p>
      </div>
      <AddWeather zone={plan.site.timeZone} />
    </details>
  );
}

interface LineProps {
  readonly text: string;
  readonly when: string;
  readonly index: number;
}

function WeatherLine({ text, when, index }: LineProps) {
  const { run, say } = useAppStore.getState();
  const drop = () => {
    if (!run((now) => withoutWeatherNote(now, index))) say('The note is removed. Undo restores it.');
  };
  return (
    <li className="log__line">
      <span className="log__when">{when}</span>
      <span>{text}</span>
      <button type="button" className="text-button" aria-label={`Remove: ${text}, ${when}`} onClick={drop}>
        Remove
      </button>
    </li>
  );
}

function AddWeather({ zone }: { readonly zone: string }) {
  const { run, say } = useAppStore.getState();
  const [text, setText] = useState('');
  const [at, setAt] = useState<string | null>(null);
  const add = () => {
    if (!text.trim()) {
      say('Write what the weather was like first.');
      return;
    }
    if (run((now) => withWeatherNote(now, { at, text: text.trim() }))) return;
    setText('');
    setAt(null);
    say(at === null ? 'Noted, without a time.' : 'Noted.');
  };
  return (
    <div className="fields">
      <div className="wide">
        <TextField label="What it was like" value={text} onCommit={setText} />
      </div>
      <InstantField
        label="When"
        value={at}
        zone={zone}
        refuse={notAhead(zone)}
        onCommit={(value) => {
          setAt(value);
          return '';
        }}
      />
      <div className="wide">
        <button type="button" className="button" onClick={add}>
          Note the weather
        </button>
      </div>
    </div>
  );
}
