import { useState } from 'react';
import type { Site } from '../../../../geometry/plan/model.ts';
import { fullTurn } from '../../../../geometry/plane/bearing.ts';
import { northBySun, wallDirections } from '../../../../geometry/sun/north-by-sun.ts';
import { msOf } from '../../../protocol/timing/clock.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { InstantField } from '../../fields/instant-field.tsx';
import { useLevel } from '../../hooks/use-level.ts';
import { directionWords, wasNorthWords } from './direction-words.ts';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

const NEEDED = 'Choose where the sun was and when.';
const NO_PLACE = 'Enter the location of the house first: where the sun stands depends on it.';
const NO_WALLS = 'Draw a wall first: north is found by the sun along it.';

/** Sets north by the sun: when it shines along a wall of the plan, its azimuth gives the direction of north on the page. */
export function SunNorth({ site, changeSite }: Props) {
  const { walls } = useLevel();
  const [toward, setToward] = useState<string | null>(null);
  const [when, setWhen] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const choices = wallDirections(walls).map((degrees) => ({ value: String(degrees), words: directionWords(degrees) }));
  return (
    <details className="group wide">
      <summary>Find north by the sun</summary>
      {choices.length === 0 ? (
        <p className="small">{NO_WALLS}</p>
      ) : (
        <div className="fields">
          <p className="small wide">
            Wait until the sun shines along a straight wall, so that its shadow lies in line with it. Outdoors or by the
            light through a window.
          </p>
          <div className="wide">
            <ChoiceField
              label="Along that wall the sun stands"
              value={choices.some(({ value }) => value === toward) ? toward : null}
              choices={choices}
              onCommit={setToward}
            />
          </div>
          <div className="wide">
            <InstantField
              label="Seen at"
              value={when}
              zone={site.timeZone}
              onCommit={(value) => {
                setWhen(value);
                return '';
              }}
            />
          </div>
          <div className="buttons wide">
            <button
              type="button"
              className="button"
              onClick={() => setWords(setNorth(site, changeSite, toward, msOf(when)))}
            >
              Set north by the sun
            </button>
          </div>
          <p className="small wide" role="status">
            {words}
          </p>
        </div>
      )}
    </details>
  );
}

/** Sets north. Returns in words what was set, or why nothing was. `toward`: degrees; `at`: ms since 1970. */
function setNorth(site: Site, changeSite: Props['changeSite'], toward: string | null, at: number | null): string {
  const { latitude, longitude } = site;
  if (latitude === null || longitude === null) return NO_PLACE;
  if (toward === null || at === null) return NEEDED;
  const found = northBySun(Number(toward), at, latitude, longitude);
  if (!found.ok) {
    return found.why === 'low'
      ? 'The sun was below the horizon then, or within 3° of it. Nothing was changed: check the day and the minute.'
      : `The sun stood ${Math.round(found.altitude)}° high then: too high to be sighted along a wall. Nothing was changed: sight it again in the morning or evening.`;
  }
  const refusal = changeSite({ north: fullTurn(Math.round(found.north * 10) / 10), northAnswered: true });
  return (
    refusal ||
    `North is set, as near as your eye: a few degrees. The sun stood ${Math.round(found.azimuth)}° from north, ${Math.round(found.altitude)}° high.${wasNorthWords(site)}`
  );
}
