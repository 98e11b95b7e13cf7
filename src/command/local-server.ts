import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A request that was let in: its method, its path behind the token, and the JSON that it brought (null for none). */
export interface Admitted {
  readonly method: 'GET' | 'POST';
  /** The parts of the path behind the token, decoded. */
  readonly path: readonly string[];
  readonly body: unknown;
}

/** What is answered: a page or JSON with its policy; or `stream` to keep the answer open. */
export type Answer =
  | { readonly status: number; readonly type: string; readonly body: string; readonly policy: string }
  | { readonly stream: (response: ServerResponse) => void };

/** A server on this machine's own address that only who knows its token can talk to. */
export interface LocalServer {
  /** With the token and a slash at its end. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** The most bytes that a request may bring. */
export const mostBytes = 256 * 1024;

const strictest = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * Listens on 127.0.0.1 only (port 0: any free one). Every address begins with a token of 192 random bits; the Host must be
 * this server, and what changes something must come from its own pages as JSON of bounded size. So neither another
 * machine, nor another site in the same browser, nor a name that was made to point here can read or change anything.
 */
export async function startLocalServer(
  port: number,
  answer: (request: Admitted) => Promise<Answer>,
): Promise<LocalServer> {
  const token = randomBytes(24).toString('base64url');
  const server = createServer(
    { requestTimeout: 10_000, headersTimeout: 5_000, maxHeaderSize: 16_384 },
    (request, response) => {
      void respond(request, response).catch((error: unknown) => {
        process.stderr.write(`${error instanceof Error ? error.stack : String(error)}
`);
        refuse(response, 500, 'The desk met a mistake of its own; where it runs it says which.');
      });
    },
  );
  server.maxConnections = 64;

  async function respond(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const own = hostsOf(server);
    if (!own.includes(request.headers.host ?? '')) return refuse(response, 421, 'This is not the name of the desk.');
    const [first = '', ...rest] = (request.url ?? '').replace(/\?.*$/, '').split('/').slice(1);
    if (!isSame(first, token)) return refuse(response, 404, 'There is nothing here.');
    const { method } = request;
    if (method !== 'GET' && method !== 'POST') return refuse(response, 405, 'The desk is asked with GET and POST.');
    const { origin, 'sec-fetch-site': site } = request.headers;
    const fromHere = origin === undefined ? method === 'GET' : own.some((host) => origin === `http://${host}`);
    if (!fromHere || (site !== undefined && site !== 'same-origin' && site !== 'none')) {
      return refuse(response, 403, 'The desk answers its own pages only.');
    }
    const path = decoded(rest);
    if (path === null) return refuse(response, 400, 'This is no address.');
    if (method === 'GET') return give(response, await answer({ method, path, body: null }));
    if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
      return refuse(response, 415, 'The desk reads JSON.');
    }
    const text = await bodyOf(request);
    if (text === null) return refuse(response, 413, 'This is more than the desk reads at once.');
    const body = parsed(text);
    if (body === undefined) return refuse(response, 400, 'This is no JSON.');
    give(response, await answer({ method, path, body }));
  }

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return {
    address: `http://${hostsOf(server)[0]}/${token}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function hostsOf(server: Server): readonly string[] {
  const { port } = server.address() as AddressInfo;
  return [`127.0.0.1:${port}`, `localhost:${port}`];
}

/** Compares without telling by its time how much was right. */
function isSame(given: string, token: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(token));
}

function decoded(path: readonly string[]): readonly string[] | null {
  try {
    return path.map((part) => decodeURIComponent(part));
  } catch {
    return null;
  }
}

/** The body as text, or null where it is too long; what comes beyond the bound is not kept. */
async function bodyOf(request: IncomingMessage): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) return null;
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > mostBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function headers(response: ServerResponse, policy: string): void {
  response.setHeader('content-security-policy', policy);
  response.setHeader('x-content-type-options', 'nosniff');
  response.setHeader('referrer-policy', 'no-referrer');
  response.setHeader('cross-origin-resource-policy', 'same-origin');
  response.setHeader('cross-origin-opener-policy', 'same-origin');
  response.setHeader('cache-control', 'no-store');
}

function give(response: ServerResponse, answer: Answer): void {
  if ('stream' in answer) {
    headers(response, strictest);
    response.writeHead(200, { 'content-type': 'text/event-stream; charset=utf-8' });
    answer.stream(response);
    return;
  }
  headers(response, answer.policy === '' ? strictest : answer.policy);
  response.writeHead(answer.status, { 'content-type': answer.type });
  response.end(answer.body);
}

function refuse(response: ServerResponse, status: number, why: string): void {
  if (response.headersSent) {
    response.destroy();
    return;
  }
  headers(response, strictest);
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', connection: 'close' });
  response.end(`${why}\n`);
}
