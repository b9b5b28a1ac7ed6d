// Catches a fault of ours while drawing, keeps what was entered (it is on the device) and says so.
import { Component, type ReactNode } from 'react';

interface ErrorEdgeProps {
  readonly title: string;
  readonly say: string;
  readonly again: string;
  readonly children: ReactNode;
}

export class ErrorEdge extends Component<ErrorEdgeProps, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <main className="notice">
        <h1>{this.props.title}</h1>
        <p>{this.props.say}</p>
        <button type="button" className="button" onClick={() => location.reload()}>
          {this.props.again}
        </button>
      </main>
    );
  }
}
