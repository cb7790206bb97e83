import { useState } from 'react';
import type { Site } from '../../../../geometry/plan/model.ts';
import { northByBearing, wallDirections } from '../../../../geometry/sun/north-by-sun.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { useLevel } from '../../hooks/use-level.ts';
import { directionWords, ROUGH_NORTH, wasNorthWords } from './direction-words.ts';

interface Props {
  readonly site: Site;
  readonly changeSite: (patch: Partial<Site>) => string;
}

/** Directions of the sides of a page without walls, degrees. */
const SIDES_OF_PAGE = [0, 90, 180, 270];
const WINDS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const STEP = 360 / WINDS.length;
const NEEDED = 'Choose on which side of the plan the street is, and which way it lies on a map.';

/** Sets north by a street: by the side of the plan on which it is, and its direction on a map. */
export function StreetNorth({ site, changeSite }: Props) {
  const { walls } = useLevel();
  const [toward, setToward] = useState<string | null>(null);
  const [wind, setWind] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const directions = wallDirections(walls);
  const choices = (directions.length > 0 ? directions : SIDES_OF_PAGE).map((degrees) => ({
    value: String(degrees),
    words: directionWords(degrees),
  }));
  const set = () => {
    if (toward === null || wind === null) return setWords(NEEDED);
    const north = northByBearing(Number(toward), WINDS.indexOf(wind) * STEP);
    const refusal = changeSite({ north, northAnswered: true });
    setWords(refusal || `North is set, within 11° as the map is read.${ROUGH_NORTH}${wasNorthWords(site)}`);
  };
  return (
    <details className="group wide">
      <summary>Find north by a street</summary>
      <div className="fields">
        <p className="small wide">Look at a map with north at its top: which way is the street, seen from the house?</p>
        <ChoiceField
          label="On the plan the street is"
          value={choices.some(({ value }) => value === toward) ? toward : null}
          choices={choices}
          onCommit={setToward}
        />
        <ChoiceField
          label="On a map it is to the"
          value={wind}
          choices={WINDS.map((name) => ({ value: name, words: name }))}
          onCommit={setWind}
        />
        <div className="buttons wide">
          <button type="button" className="button" onClick={set}>
            Set north by the street
          </button>
        </div>
        <p className="small wide" role="status">
          {words}
        </p>
      </div>
    </details>
  );
}
