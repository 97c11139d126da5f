import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

export interface Position {
  line: number;
  character: number;
}
interface Message {
  id?: number;
  method?: string;
  params?: unknown;
  result?: unknown;
}

/** An editor's side of a YAML language server: opens texts and asks what it would show. */
export interface Editor {
  /** @returns the messages of what is wrong in the text */
  open(file: string, text: string): Promise<string[]>;
  hover(file: string, position: Position): Promise<string>;
  /** @returns labels of what is offered */
  complete(file: string, position: Position): Promise<string[]>;
  close(): void;
}

/** Starts the server as editors do, and talks with it in the language server protocol. */
export async function startEditor(): Promise<Editor> {
  const home = dirname(createRequire(import.meta.url).resolve('yaml-language-server/package.json'));
  const server = spawn(process.execPath, [join(home, 'bin/yaml-language-server'), '--stdio']);
  const answers = new Map<number, (result: unknown) => void>();
  const diagnosed = new Map<string, (messages: string[]) => void>();
  let last = 0;
  const post = (message: Message) => {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  const ask = (method: string, params: unknown) =>
    new Promise<unknown>((resolve) => {
      const id = ++last;
      answers.set(id, resolve);
      post({ id, method, params });
    });
  const receive = ({ id, method, params, result }: Message) => {
    if (method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics } = params as { uri: string; diagnostics: { message: string }[] };
      diagnosed.get(uri)?.(diagnostics.map(({ message }) => message));
    } else if (method && id !== undefined) {
      // The server asks for settings: none are set.
      const { items } = (params ?? {}) as { items?: unknown[] };
      post({ id, result: items ? items.map(() => null) : null });
    } else if (id !== undefined) answers.get(id)?.(result);
  };
  let pending = Buffer.alloc(0);
  server.stdout.on('data', (chunk: Buffer) => {
    pending = Buffer.concat([pending, chunk]);
    for (;;) {
      const head = /Content-Length: (\d+)\r\n(?:.+\r\n)*\r\n/.exec(pending.toString('latin1'));
      if (!head) return;
      const from = head.index + head[0].length;
      const to = from + Number(head[1]);
      if (pending.length < to) return;
      receive(JSON.parse(pending.subarray(from, to).toString()));
      pending = pending.subarray(to);
    }
  });
  await ask('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  post({ method: 'initialized', params: {} });
  const at = (file: string, position: Position) => ({
    textDocument: { uri: pathToFileURL(file).href },
    position,
  });
  return {
    open: (file, text) =>
      new Promise((resolve) => {
        const { href: uri } = pathToFileURL(file);
        diagnosed.set(uri, resolve);
        post({
          method: 'textDocument/didOpen',
          params: { textDocument: { uri, languageId: 'yaml', version: 1, text } },
        });
      }),
    async hover(file, position) {
      const shown = (await ask('textDocument/hover', at(file, position))) as { contents: { value: string } } | null;
      return shown?.contents.value ?? '';
    },
    async complete(file, position) {
      const offered = (await ask('textDocument/completion', at(file, position))) as { items: { label: string }[] };
      return offered.items.map(({ label }) => label);
    },
    close: () => server.kill(),
  };
}
