import { useState } from 'react';
import type { Plan } from '../../../geometry/plan/model.ts';
import { withoutWeather, withWeather } from '../../job/log/edit.ts';
import { msOf, saidInstant } from '../../job/timing/clock.ts';
import { useAppStore } from '../../state/store.ts';
import { InstantField } from '../fields/instant-field.tsx';
import { TextField } from '../fields/text-field.tsx';

/** What the weather was like during the test: temperatures, rain, wind, unusual storms. */
export function WeatherNotes({ plan }: { readonly plan: Plan }) {
  const { run, say } = useAppStore.getState();
  const [text, setText] = useState('');
  const [at, setAt] = useState<string | null>(null);
  const { weather = [] } = plan;
  const zone = plan.site.timeZone;
  const add = () => {
    if (!text.trim()) {
      say('Write what the weather was like first.');
      return;
    }
    if (run((now) => withWeather(now, { at, text: text.trim() }))) return;
    setText('');
    setAt(null);
  };
  return (
    <details className="group">
      <summary>
        Weather <span className="soft">{weather.length > 0 ? `${weather.length} noted` : 'nothing noted'}</span>
      </summary>
      <ul className="house-lines">
        {weather.map((note, index) => {
          const time = msOf(note.at);
          const words = `${time === null ? '' : `${saidInstant(time, zone)}: `}${note.text}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two notes may have the same words
            <li key={`${words}${index}`} className="house-line">
              {words}{' '}
              <button
                type="button"
                className="text-button"
                aria-label={`Take away: ${words}`}
                onClick={() => run((now) => withoutWeather(now, index))}
              >
                Take away
              </button>
            </li>
          );
        })}
      </ul>
      <div className="fields">
        <div className="wide">
          <TextField
            label="What it was like"
            value={text}
            hint="Outdoor temperatures, rain or snow, wind, unusual storms."
            onCommit={setText}
          />
        </div>
        <InstantField
          label="When"
          value={at}
          zone={zone}
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
    </details>
  );
}
