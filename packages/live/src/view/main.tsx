import { render } from 'preact';
import { valueOfText } from '../hand-over/column-text.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { textOfPacked } from '../hand-over/packed-text.js';
import { App } from './app.js';
import { Session } from './session.js';

const textOf = (id: string): string => document.getElementById(id)!.textContent!;

/** What the page holds beside its code. */
async function begin(root: HTMLElement): Promise<void> {
  const handOver = valueOfText(await textOfPacked(textOf('site'))) as HandOver;
  const workerUrl = URL.createObjectURL(new Blob([textOf('engine')], { type: 'text/javascript' }));
  const session = await Session.begin(handOver, workerUrl);
  const show = () => render(<App session={session} state={session.state} />, root);
  session.onChange = show;
  root.replaceChildren();
  show();
}

const root = document.getElementById('page')!;
begin(root).catch((error: unknown) => {
  const line = document.createElement('p');
  line.className = 'refused';
  line.setAttribute('role', 'alert');
  line.textContent = `This page cannot be shown: ${error instanceof Error ? error.message : String(error)}`;
  root.replaceChildren(line);
});
