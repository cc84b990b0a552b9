import { Component, type ReactNode } from 'react';
import { t } from '../words/t.ts';

interface Props {
  /** A new page gets a new try. */
  readonly where: string;
  readonly children: ReactNode;
}

/** Keeps the frame standing when a page cannot be drawn. */
export class Fault extends Component<Props, { readonly stoppedAt: string | null }> {
  override state = { stoppedAt: null as string | null };

  static getDerivedStateFromError(): { stoppedAt: string } {
    return { stoppedAt: window.location.hash };
  }

  override componentDidUpdate(before: Props): void {
    if (before.where !== this.props.where && this.state.stoppedAt !== null) this.setState({ stoppedAt: null });
  }

  override render(): ReactNode {
    if (this.state.stoppedAt === null) return this.props.children;
    return (
      <div className="page" role="alert">
        <h1>{t('frame.faultTitle')}</h1>
        <p>{t('frame.faultWords')}</p>
        <button type="button" className="button" onClick={() => this.setState({ stoppedAt: null })}>
          {t('frame.faultAgain')}
        </button>
      </div>
    );
  }
}
