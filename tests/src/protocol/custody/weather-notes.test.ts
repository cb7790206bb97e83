import { describe, expect, it } from 'vitest';
import { withWeatherNote } from '../../../../src/protocol/custody/log-entries.ts';
import { chronologicalWeather } from '../../../../src/protocol/custody/weather-notes.ts';
import { may, planOf } from '../../../helpers/custody.ts';

describe('the weather', () => {
  it('is told met of time, and says what lies outside the test', () => {
    const notes = [
      { at: null, text: 'calm' },
      { at: may(5, '10:00'), text: 'dry' },
      { at: may(3, '08:00'), text: 'rain' },
      { at: may(1, '08:00'), text: 'snow' },
    ];
    const plan = notes.reduce(withWeatherNote, planOf(['A1']));
    expect(chronologicalWeather(plan).map(({ index, when, note }) => [index, when, note.text])).toEqual([
      [3, 'Friday, May 1, 8:00 am, before the test', 'snow'],
      [2, 'Sunday, May 3, 8:00 am', 'rain'],
      [1, 'Tuesday, May 5, 10:00 am, after the test', 'dry'],
      [0, 'Time not known', 'calm'],
    ]);
  });
});
