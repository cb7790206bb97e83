import { Component, type ReactNode } from 'react';
import { newSheet, saveWhole } from '../../commands/open-and-save.ts';
import { useAppStore } from '../../state/store.ts';

/** Place of a part on the page: an area of the grid, over the plan, or in the flow. */
export type PlaceOnPage = 'top' | 'bar' | 'job' | 'side' | 'plan' | 'flow';

interface Props {
  readonly children: ReactNode;
  /** The place of the part, while the rest of the page keeps working. Left out for the whole page. */
  readonly place?: PlaceOnPage;
  /** The id of the part if a link leads to it: the fault message gets the id. */
  readonly id?: string | undefined;
}
interface State {
  readonly trouble: string | null;
}

/** Catches faults of the app in rendering: the plan can still be saved, and the failed part tried again. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { trouble: null };
  #stop = (): void => undefined;

  static getDerivedStateFromError(error: unknown): State {
    return { trouble: error instanceof Error ? error.message : String(error) };
  }

  override componentDidMount(): void {
    // The fault may not occur with the changed plan.
    this.#stop = useAppStore.subscribe(({ plan }, before) => {
      if (plan !== before.plan && this.state.trouble !== null) this.#again();
    });
  }

  override componentWillUnmount(): void {
    this.#stop();
  }

  readonly #again = (): void => this.setState({ trouble: null });

  override render(): ReactNode {
    const { place, id, children } = this.props;
    if (this.state.trouble === null) return children;
    const button = (words: string, act: () => void, className = 'button') => (
      <button type="button" className={className} onClick={act}>
        {words}
      </button>
    );
    const Tag = place ? 'section' : 'main';
    const Heading = place ? 'h2' : 'h1';
    return (
      <Tag className="broken" data-place={place} id={id} tabIndex={id ? -1 : undefined}>
        <Heading>Something in Stillspot went wrong</Heading>
        <p>
          This is a fault of Stillspot{place ? ' in this part of the page' : ''}. Your plan is unchanged: save it as a
          file, then try again.
        </p>
        <div className="buttons">
          {button('Save the plan', () => void saveWhole(), 'button button--main')}
          {button('Try again', this.#again)}
          {button('Undo the last step', () => useAppStore.getState().undo())}
          {!place && button('Set it aside and start a new plan', () => void newSheet())}
        </div>
        <p className="fine soft">Details: {this.state.trouble}</p>
      </Tag>
    );
  }
}
