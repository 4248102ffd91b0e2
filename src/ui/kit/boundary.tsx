import { Component, type ComponentChildren } from 'preact';

interface State {
  readonly broken: string | null;
}

/** Contains a bug on one screen: the day is safe in the journal, and the other tabs go on. */
export class Boundary extends Component<{ children: ComponentChildren }, State> {
  override state: State = { broken: null };

  static override getDerivedStateFromError(error: unknown): State {
    return { broken: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.broken === null) return this.props.children;
    return (
      <main class="section">
        <h1>Something went wrong on this screen</h1>
        <p>Nothing saved is lost. Go back, or export the day from the list of days.</p>
        <p class="soft">{this.state.broken}</p>
        <p>
          <a href="#/">List of days</a>
        </p>
      </main>
    );
  }
}
