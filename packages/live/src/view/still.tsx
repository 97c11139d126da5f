import { Component, type FunctionComponent, type VNode } from 'preact';

/** A part of the page that stays as it is until one of its properties is another. */
export function still<Props extends object>(Part: FunctionComponent<Props>): new (props: Props) => Component<Props> {
  return class extends Component<Props> {
    override shouldComponentUpdate(next: Readonly<Props>): boolean {
      return (Object.keys(next) as (keyof Props)[]).some((name) => next[name] !== this.props[name]);
    }
    override render(): VNode {
      return <Part {...this.props} />;
    }
  };
}
