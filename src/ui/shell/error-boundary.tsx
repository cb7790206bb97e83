import { Component, type ReactNode } from 'react';
import { newSheet, saveWhole } from '../../commands/open-and-save.ts';
import { useAppStore } from '../../state/store.ts';

interface State {
  readonly trouble: string | null;
}

/** Catches our own mistakes: the plan can still be saved, and the page can be tried again. */
export class ErrorBoundary extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { trouble: null };

  static getDerivedStateFromError(error: unknown): State {
    return { trouble: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.trouble === null) return this.props.children;
    return (
      <main className="broken">
        <h1>Something in Stillspot went wrong</h1>
        <p>This is a fault of Stillspot. Your plan is unchanged: save it as a file, then try again.</p>
        <div className="buttons">
          <button type="button" className="button button--main" onClick={() => void saveWhole()}>
            Save the plan
          </button>
          <button type="button" className="button" onClick={() => this.setState({ trouble: null })}>
            Try again
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              useAppStore.getState().undo();
              this.setState({ trouble: null });
            }}
          >
            Undo the last step
          </button>
          <button
            type="button"
            className="button"
            onClick={() => void newSheet().then(() => this.setState({ trouble: null }))}
          >
            Set it aside and start a new plan
          </button>
        </div>
        <p className="fine soft">Details: {this.state.trouble}</p>
      </main>
    );
  }
}
