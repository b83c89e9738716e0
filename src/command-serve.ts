/**
 * `sillplate serve`: the pages on this machine, following every edit.
 *
 * Pages are kept in memory and nothing but the photo cache is written. The server listens on 127.0.0.1 only,
 * and answers only requests that name this machine, so that no page elsewhere can read a house through it.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { watch } from 'chokidar';
import { DELIVERIES } from './diagnostics/delivery-names.js';
import { NOWHERE } from './diagnostics/place.js';
import { locate, printReport, visible } from './diagnostics/report.js';
import { findHouses, type HouseFolder, shownPath } from './find-houses.js';
import { escapeHtml, PREVIEW_POLICY, Preview } from './preview.js';
import type { Terminal } from './terminal.js';

export interface ServeOptions {
  readonly content: string;
  readonly asOf: string;
  readonly out: string;
  readonly port: number;
}

export async function serveCommand(
  wanted: readonly string[],
  options: ServeOptions,
  terminal: Terminal,
  ready?: (stop: () => Promise<void>, address: string) => void,
): Promise<number> {
  const { houses, diagnostics } = await findHouses(options.content, wanted);
  if (diagnostics.length > 0)
    terminal.out(`${printReport(locate(diagnostics, NOWHERE), 'text', terminal.colour)}\n`);
  if (houses.length === 0) return 1;
  const preview = new Preview({
    asOf: options.asOf,
    out: path.resolve(options.out),
    outShown: shownPath(options.out),
  });
  for (const house of houses) await refresh(preview, house, terminal);
  const listeners = new Set<ServerResponse>();
  const server = createServer(
    (request, response) => void answer(request, response, preview, listeners, terminal),
  );
  // A page is asked for in one go; whoever sends a request byte by byte only holds a connection.
  server.headersTimeout = 10_000;
  server.requestTimeout = 20_000;
  server.maxConnections = 256;
  const bound = await listen(server, options.port, terminal);
  if (bound === undefined) return 2;
  const address = `http://127.0.0.1:${bound}/`;

  const watcher = watch(
    houses.map((house) => house.folder),
    {
      ignoreInitial: true,
      // A name may hold brackets.
      disableGlobbing: true,
      ignored: (file: string) => isPassedOver(file, houses),
      awaitWriteFinish: { stabilityThreshold: 25, pollInterval: 5 },
    },
  );
  watcher.on('error', (thrown: NodeJS.ErrnoException) => terminal.error(notFollowed(thrown)));
  await new Promise<void>((resolve) => watcher.once('ready', () => resolve()));
  terminal.out(`\nLook at ${address}  (Ctrl+C ends it)\n`);

  // Saving in an editor makes several events; each house that changed is read once after them.
  const changed = new Set<HouseFolder>();
  let working = false;
  const work = async (): Promise<void> => {
    if (working) return;
    working = true;
    for (const house of changed) {
      changed.delete(house);
      try {
        await refresh(preview, house, terminal);
      } catch (thrown) {
        // One edit that goes wrong must not end the preview; the pages stay as they were.
        terminal.error(`error bug.internal  ${visible((thrown as Error).message)}\n`);
      }
      for (const listener of listeners) listener.write('data: changed\n\n');
    }
    working = false;
  };
  watcher.on('all', (_event, file) => {
    const house = houses.find((one) => path.resolve(file).startsWith(path.resolve(one.folder) + path.sep));
    if (house === undefined) return;
    changed.add(house);
    void work();
  });
  await new Promise<void>((resolve) => {
    const stop = async (): Promise<void> => {
      await watcher.close();
      for (const listener of listeners) listener.end();
      server.close(() => resolve());
      server.closeAllConnections();
    };
    process.once('SIGINT', () => void stop());
    process.once('SIGTERM', () => void stop());
    ready?.(stop, address);
  });
  return 0;
}

/** Deliveries and hidden files below a house; how the folders above it are called is nobody's matter. */
function isPassedOver(file: string, houses: readonly HouseFolder[]): boolean {
  return houses.some(({ folder }) => {
    const below = path.relative(path.resolve(folder), path.resolve(file)).split(path.sep);
    return below[0] === DELIVERIES || (below[0] !== '..' && below.some((name) => /^\../.test(name)));
  });
}

/** Without this an unreadable folder, or a limit of the system, would end the preview. */
const notFollowed = ({ code, path: at, message }: NodeJS.ErrnoException): string =>
  `error intake.no-file  ${visible(at ?? 'the house folder')}\n  changes there are not followed (${visible(code ?? message)})\n  do: check who may read it, and start  sillplate serve  again\n`;

async function refresh(preview: Preview, house: HouseFolder, terminal: Terminal): Promise<void> {
  const started = performance.now();
  const { located, name } = await preview.refresh(house);
  const told = located.filter(({ diagnostic }) => diagnostic.severity !== 'note');
  if (told.length > 0) terminal.out(`${printReport(told, 'text', terminal.colour)}\n`);
  const broken = told.some(({ diagnostic }) => diagnostic.severity === 'error');
  terminal.out(
    broken
      ? `${name}: not changed, see above\n`
      : `${name}: shown, ${Math.round(performance.now() - started)} ms\n`,
  );
}

function listen(
  server: ReturnType<typeof createServer>,
  port: number,
  terminal: Terminal,
): Promise<number | undefined> {
  return new Promise((resolve) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      terminal.error(
        `error cli.usage  port ${port} can’t be used (${error.code})\n  do: choose another, for example  --port ${port + 1}\n`,
      );
      resolve(undefined);
    });
    server.listen(port, '127.0.0.1', () => resolve((server.address() as AddressInfo).port));
  });
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  preview: Preview,
  listeners: Set<ServerResponse>,
  terminal: Terminal,
): Promise<void> {
  const send = (status: number, type: string, body: string | Uint8Array): void => {
    response.writeHead(status, {
      'content-type': type,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
      'x-frame-options': 'DENY',
      ...(type.startsWith('text/html') ? { 'content-security-policy': PREVIEW_POLICY } : {}),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  };
  if (!isLocal(request))
    return send(403, 'text/plain; charset=utf-8', 'This preview answers only this machine.\n');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return send(405, 'text/plain; charset=utf-8', 'Only looking is possible.\n');
  const pathname = pathOf(request);
  if (pathname === undefined) return send(400, 'text/plain; charset=utf-8', 'This address can’t be read.\n');
  if (pathname === '/-/changes') {
    response.writeHead(200, {
      'content-type': 'text/event-stream',
      'cache-control': 'no-store',
      'cross-origin-resource-policy': 'same-origin',
    });
    response.flushHeaders();
    if (request.method === 'HEAD') {
      response.end();
      return;
    }
    // A browser keeps six of them at most; of more than that the oldest is nobody's.
    const [oldest] = listeners.size >= MOST_LISTENERS ? listeners : [];
    oldest?.end();
    if (oldest !== undefined) listeners.delete(oldest);
    listeners.add(response);
    request.on('close', () => listeners.delete(response));
    return;
  }
  try {
    const found = await preview.find(pathname);
    if (found === undefined)
      send(
        404,
        'text/html; charset=utf-8',
        `<!doctype html><html lang="en"><title>Not there</title><p>There is no page ${escapeHtml(pathname)}. <a href="/">All houses</a></p></html>`,
      );
    else send(200, found.type, found.body);
  } catch (thrown) {
    terminal.error(`error bug.internal  ${visible((thrown as Error).message)}\n`);
    send(500, 'text/plain; charset=utf-8', 'This page could not be made; see the terminal.\n');
  }
}

/** Undefined if the request asks for something that is no path here. */
function pathOf(request: IncomingMessage): string | undefined {
  const asked = request.url ?? '/';
  return asked.startsWith('/') && !asked.startsWith('//') && URL.canParse(asked, 'http://127.0.0.1')
    ? new URL(asked, 'http://127.0.0.1').pathname
    : undefined;
}

/** Pages that listen for changes at once. */
const MOST_LISTENERS = 64;

/**
 * A page on another site can make a browser ask here; its Host or Origin gives it away. Of a script or a picture that it
 * takes from here no Origin is sent, but browsers say where they were asked from (Fetch Metadata): a link may lead here,
 * and nothing else.
 */
function isLocal(request: IncomingMessage): boolean {
  const name = /^(127\.0\.0\.1|localhost)(:\d+)?$/;
  const { host, origin, 'sec-fetch-site': from, 'sec-fetch-dest': into } = request.headers;
  if ((from === 'cross-site' || from === 'same-site') && into !== 'document') return false;
  if (host === undefined || !name.test(host)) return false;
  return origin === undefined || origin === `http://${host}`;
}
