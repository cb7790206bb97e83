import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { oneLine } from '../../../geometry/messages/plain-text.ts';
import { TITLE_FIELD } from '../../commands/go-to.ts';
import { openFiles } from '../../commands/open-and-save.ts';
import { PLAN_FILE_PICKER } from '../../commands/plan-commands.ts';
import { canRedo, canUndo } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { canPickPlace } from '../../storage/plan-files.ts';
import { writeSetting } from '../../storage/settings.ts';
import { THEMES, type ThemeName } from '../../theme/tokens.ts';
import { useTypedSaved } from '../hooks/use-typed-saved.ts';
import { CommandButton } from './command-button.tsx';
import { SaveStatusLine } from './save-status-line.tsx';
import './top-bar.css';

export function TopBar() {
  /** Whether the list of rarer buttons is open, on a narrow page. */
  const [more, setMore] = useState(false);
  return (
    <header className="top">
      <h1 className="top__name">
        <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true" fill="none" stroke="currentColor">
          <circle cx="11" cy="8" r="6" strokeWidth="2" />
          <circle cx="11" cy="8" r="1.5" fill="currentColor" stroke="none" />
          <path d="M2 17.5h18M4 17.5v3M8 17.5v2M12 17.5v3M16 17.5v2M20 17.5v3" strokeWidth="1.5" />
        </svg>
        <span className="top__word">Stillspot</span>
      </h1>
      <CommandButton command="plans" />
      <PlanTitle />
      <SaveStatusLine />
      <div className="top__buttons">
        <Steps />
        <button
          type="button"
          className="button button--bare top__toggle"
          aria-expanded={more}
          aria-controls="top-more"
          onClick={() => setMore(!more)}
        >
          Menu
        </button>
        <div id="top-more" className="top__more" data-open={more || undefined}>
          <Files />
          <span className="top__gap" />
          <Looks />
        </div>
      </div>
    </header>
  );
}

function PlanTitle() {
  const title = useAppStore((state) => state.plan.title);
  const run = useAppStore((state) => state.run);
  const [text, setText] = useState(title);
  useEffect(() => setText(title), [title]);
  const commit = () => {
    if (text !== title) run((plan) => ({ ...plan, title: text }));
  };
  useTypedSaved(text === title ? null : text, commit);
  return (
    <input
      id={TITLE_FIELD}
      className="top__title"
      aria-label="Title of the plan"
      placeholder="Title of the plan"
      value={text}
      autoComplete="off"
      onChange={(event) => setText(oneLine(event.currentTarget.value))}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setText(title);
      }}
    />
  );
}

function Steps() {
  const history = useStore(useAppStore.temporal);
  const past = useAppStore((state) => canUndo(state, history));
  const future = useAppStore((state) => canRedo(state, history));
  return (
    <>
      <CommandButton command="undo" className="button button--bare" disabled={!past} />
      <CommandButton command="redo" className="button button--bare" disabled={!future} />
    </>
  );
}

function Files() {
  return (
    <>
      <input
        id={PLAN_FILE_PICKER}
        type="file"
        accept=".json,application/json"
        multiple
        className="unseen"
        tabIndex={-1}
        aria-label="Plan file to open"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = ''; // the same file can be picked again
          void openFiles(files);
        }}
      />
      <CommandButton command="save" className="button button--bare" />
      {canPickPlace() && <CommandButton command="save-to" className="button button--bare top__wide" />}
      <CommandButton command="picture" />
    </>
  );
}

function Looks() {
  const theme = useAppStore((state) => state.theme);
  const setTheme = useAppStore((state) => state.setTheme);
  const length = useAppStore((state) => state.plan.display.length);
  const run = useAppStore((state) => state.run);
  return (
    <>
      <select
        className="top__select"
        aria-label="Lengths in"
        value={length}
        onChange={(event) => {
          const next = event.currentTarget.value === 'metric' ? 'metric' : 'feet-inches';
          run((plan) => ({ ...plan, display: { ...plan.display, length: next } }));
        }}
      >
        <option value="feet-inches">ft, in</option>
        <option value="metric">m, cm</option>
      </select>
      <select
        className="top__select"
        aria-label="Colors"
        value={theme}
        // The options are the names of the themes.
        onChange={(event) => {
          const chosen = event.currentTarget.value as ThemeName;
          setTheme(chosen);
          // Stored only when the user picks it: until then the setting of the system applies.
          void writeSetting('theme', chosen);
        }}
      >
        {Object.entries(THEMES).map(([name, { name: words }]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
      <CommandButton command="keys" className="button button--bare top__wide" />
    </>
  );
}
