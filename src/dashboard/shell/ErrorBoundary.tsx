import { Component, type ComponentChildren } from 'preact';
import { t } from '../strings/strings.ts';

/** What a person sees where the page itself breaks. */
export class ErrorBoundary extends Component<{ children: ComponentChildren }, { failed: boolean }> {
  override state = { failed: false };

  static override getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <main class="broken">
        <h1>{t.error.title}</h1>
        <p>{t.error.help}</p>
        <button type="button" onClick={() => location.reload()}>
          {t.error.reload}
        </button>
      </main>
    );
  }
}
