import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { PART_MISSING } from '../../../platform/part-missing.ts';
import type { FoundPlaces, Place, PlaceList } from '../../../platform/places/places.ts';
import './place-search.css';

interface Props {
  readonly onChoose: (place: Place) => void;
}

/** A search for a ZIP code or a town; a result is chosen by press or by keys. The list is part of the app and needs no network. */
export function PlaceSearch({ onChoose }: Props) {
  const id = useId();
  const [text, setText] = useState('');
  const [isOpen, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const { found, isLoaded, load } = useFound(text);
  const input = useRef<HTMLInputElement>(null);
  /** Enter was pressed before the list was loaded: it takes effect when the list is loaded. */
  const isAwaited = useRef(false);
  const { places, words } = isOpen ? found : NOTHING;
  const choose = (place: Place) => {
    isAwaited.current = false;
    setText('');
    setOpen(false);
    setActive(-1);
    input.current?.focus({ preventScroll: true });
    onChoose(place);
  };
  useEffect(() => {
    if (!isLoaded || !isAwaited.current) return;
    isAwaited.current = false;
    const [only, ...others] = found.places;
    if (only && others.length === 0) choose(only);
  });
  const step = (by: number) => {
    setOpen(true);
    const count = found.places.length;
    if (count > 0) setActive((active + by + (active < 0 && by < 0 ? 1 : 0) + count) % count);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    // A single result can be chosen without an arrow key.
    const place = places[active] ?? (places.length === 1 ? places[0] : undefined);
    if (event.key === 'ArrowDown') step(1);
    else if (event.key === 'ArrowUp') step(-1);
    else if (event.key === 'Enter' && place) choose(place);
    else if (event.key === 'Enter' && text && !isLoaded) isAwaited.current = true;
    else if (event.key === 'Escape' && isOpen) setOpen(false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="field wide place-search">
      <label className="field__label" htmlFor={id}>
        ZIP code or town in the United States
      </label>
      <div className="place-search__box">
        <input
          ref={input}
          id={id}
          className="field__input"
          role="combobox"
          aria-expanded={places.length > 0}
          aria-controls={`${id}-places`}
          aria-autocomplete="list"
          aria-activedescendant={places[active] ? `${id}-${active}` : undefined}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          value={text}
          onFocus={(event) => {
            load();
            event.currentTarget.select();
          }}
          onChange={(event) => {
            isAwaited.current = false;
            setText(event.currentTarget.value);
            setActive(-1);
            setOpen(true);
          }}
          onBlur={() => {
            isAwaited.current = false;
            setOpen(false);
          }}
          onKeyDown={onKeyDown}
        />
        <div className="place-search__found" hidden={places.length === 0 && !words}>
          <Places id={id} places={places} active={active} onChoose={choose} />
          <p className="small" aria-live="polite">
            {words}
          </p>
        </div>
      </div>
    </div>
  );
}

interface PlacesProps {
  readonly id: string;
  readonly places: readonly Place[];
  readonly active: number;
  readonly onChoose: (place: Place) => void;
}

/** The list of results. The field keeps the focus, handles the keys and names the active place. */
function Places({ id, places, active, onChoose }: PlacesProps) {
  return (
    <div id={`${id}-places`} role="listbox" aria-label="Places">
      {places.map((place, i) => (
        <button
          key={place.name}
          id={`${id}-${i}`}
          type="button"
          tabIndex={-1}
          role="option"
          aria-selected={i === active}
          className="place-search__place"
          // Losing the focus would close the list under the press.
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onChoose(place)}
        >
          {place.name}
        </button>
      ))}
    </div>
  );
}

const NOTHING: FoundPlaces = { places: [], words: '' };

/** Returns the results for a text. The list is loaded when the field is first used. */
function useFound(text: string): {
  readonly found: FoundPlaces;
  readonly isLoaded: boolean;
  readonly load: () => void;
} {
  const [list, setList] = useState<PlaceList | null>(null);
  const [isMissing, setMissing] = useState(false);
  const load = () => {
    if (list) return;
    setMissing(false);
    import('../../../platform/places/places.ts').then(
      (part) => setList(part.placeList()),
      () => setMissing(true),
    );
  };
  const found = useMemo(() => {
    if (list) return list.find(text);
    return isMissing ? { places: [], words: PART_MISSING } : NOTHING;
  }, [list, isMissing, text]);
  return { found, isLoaded: list !== null, load };
}
