import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { CannotSave, saveBeside } from './save-beside.js';

/** Only this machine can reach it. */
const loopback = '127.0.0.1';

/** Largest site file that is taken, bytes. */
const mostBytes = 2e6;

export interface LiveServer {
  /** What to open in a browser; the token in it lets nobody else in. */
  address: string;
  /** Ends the server, and the connections that are open. */
  close(): Promise<void>;
}

/**
 * Serves one page on the loopback address at a free port. Whoever does not know the token gets nothing, nor does a page of
 * another origin, nor one that reaches this machine under another name.
 *
 * @param pageFor the page, from the path to which it may send a site file
 * @param siteFile beside which that one is written
 */
export async function serveLive(pageFor: (savePath: string) => string, siteFile: string): Promise<LiveServer> {
  const token = randomBytes(24).toString('base64url');
  const page = Buffer.from(pageFor(`/${token}/save`));
  const server = createServer((request, response) => {
    answer(request, response).catch(() => send(response, 500, 'text/plain', 'The answer failed.'));
  });
  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (!isFromPage(request, server)) return send(response, 403, 'text/plain', 'Not for you.');
    if (request.url === `/${token}/` && (request.method === 'GET' || request.method === 'HEAD')) {
      return send(response, 200, 'text/html; charset=utf-8', page);
    }
    if (request.url === `/${token}/save` && request.method === 'POST') return save(request, response, siteFile);
    return send(response, 404, 'text/plain', 'There is nothing here.');
  }
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, loopback, resolve);
  });
  return {
    address: `http://${loopback}:${portOf(server)}/${token}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

/** Whether a request comes from this machine, to this very address, and from no page but this server's own. */
function isFromPage({ headers, method, socket }: IncomingMessage, server: Server): boolean {
  const host = `${loopback}:${portOf(server)}`;
  if (socket.remoteAddress !== loopback || headers.host !== host) return false;
  const { origin } = headers;
  return origin === undefined ? method !== 'POST' : origin === `http://${host}`;
}

async function save(request: IncomingMessage, response: ServerResponse, siteFile: string): Promise<void> {
  if (request.headers['content-type'] !== 'application/json') return send(response, 415, 'text/plain', 'Send JSON.');
  // A browser says how long it is what it sends, and then sends no more.
  if (!(Number(request.headers['content-length']) <= mostBytes)) {
    request.resume();
    return send(response, 413, 'text/plain', 'Too large for a site file.');
  }
  const pieces: Buffer[] = [];
  for await (const piece of request) pieces.push(piece as Buffer);
  try {
    const written = saveBeside(siteFile, JSON.parse(Buffer.concat(pieces).toString('utf8')));
    send(response, 200, 'text/plain; charset=utf-8', `Written: ${written}`);
  } catch (error) {
    if (!(error instanceof CannotSave || error instanceof SyntaxError)) throw error;
    send(response, 400, 'text/plain; charset=utf-8', `Not written: ${error.message}`);
  }
}

function send(response: ServerResponse, status: number, type: string, body: string | Buffer): void {
  response.writeHead(status, {
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
  });
  response.end(body);
}
