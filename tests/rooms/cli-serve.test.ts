/** `sillplate serve`: for this machine only, one edit shown, an error keeps the old page. */

import { rmSync, writeFileSync } from 'node:fs';
import { request as ask, type IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serveCommand } from '../../src/command-serve.js';
import { quietProgress } from '../tools/quiet-progress.js';
import { SMALL_HOUSE, scratchFolder, writeHouse } from './cli-program.js';

const scratch = scratchFolder();
/** How the folders above a house are called keeps nobody from following it. */
const home = writeHouse(path.join(scratch, '.kept (1) [a]', 'deliveries'), 'served');
const write = (yaml: string): void => writeFileSync(path.join(home, 'house.yaml'), yaml);
let said = '';
let stop: () => Promise<void> = async () => undefined;
let ended: Promise<number>;
let port = 0;

beforeAll(async () => {
  const address = await new Promise<string>((resolve) => {
    ended = serveCommand(
      [home, path.join(scratch, 'nowhere')],
      { content: 'content', asOf: '2026-11-20', out: path.join(scratch, 'out'), port: 0 },
      {
        out: (text) => (said += text),
        error: (text) => (said += text),
        colour: false,
        progress: quietProgress,
      },
      (end, shown) => {
        stop = end;
        resolve(shown);
      },
    );
  });
  port = Number(new URL(address).port);
});

afterAll(async () => {
  await stop();
  expect(await ended).toBe(0);
  rmSync(scratch, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** Sends the path as it stands; a browser's own tidying would hide what is asked here. */
function get(asked: string, headers: Readonly<Record<string, string>> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    ask({ host: '127.0.0.1', port, path: asked, method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => (body += text));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    })
      .on('error', reject)
      .end();
  });
}

/** The next message of the stream that pages listen to. */
function nextChange(): Promise<string> {
  return new Promise((resolve, reject) => {
    const request = ask({ host: '127.0.0.1', port, path: '/-/changes' }, (response) => {
      expect(response.headers['content-type']).toBe('text/event-stream');
      response.setEncoding('utf8').once('data', (text: string) => {
        resolve(text);
        request.destroy();
      });
    });
    request.on('error', reject).end();
  });
}

it('says of a house that is not there that it isn’t, and shows the others', () => {
  expect(said).toMatch(/error intake\.no-folder .*nowhere/);
  expect(said).toContain('served: shown');
});

describe('pages', () => {
  it('lists the house, and shows it with a script that follows edits', async () => {
    const list = await get('/');
    expect(list.status).toBe(200);
    expect(list.body).toContain('<a href="/served/buyer/index.html">');
    const page = await get('/served/buyer/index.html');
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.body).toContain('Test Lane');
    expect(page.body).toContain('<script src="/-/follow.js"></script>');
    expect((await get('/-/follow.js')).body).toContain('new EventSource("/-/changes")');
  });

  it('makes the PDF when it is asked for', async () => {
    const pdf = await get('/served/agent/served-agent.pdf');
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.body.startsWith('%PDF-')).toBe(true);
  });

  it('answers HEAD without a body and refuses what would change something', async () => {
    expect((await get('/', {}, 'HEAD')).body).toBe('');
    expect((await get('/', {}, 'POST')).status).toBe(405);
    for (const method of ['DELETE', 'PUT', 'PATCH', 'OPTIONS', 'PROPFIND', 'TRACE'])
      for (const asked of ['/', '/served/buyer/index.html', '/-/changes', '/nowhere'])
        expect((await get(asked, {}, method)).status, `${method} ${asked}`).toBe(405);
    // What the stream's head says, without a stream.
    expect((await get('/-/changes', {}, 'HEAD')).status).toBe(200);
  });
});

/** Every address of the preview that a page is at, and one that none is. */
const everyPage = async (): Promise<string[]> => {
  const { body } = await get('/');
  const fronts = [...body.matchAll(/href="(\/[^"]+index\.html)"/g)].map(([, href]) => href ?? '');
  expect(fronts).toHaveLength(4);
  const inside = await Promise.all(
    fronts.map(async (front) =>
      [...(await get(front)).body.matchAll(/href="([a-z-]+\.html)/g)].map(
        ([, file]) => `${path.posix.dirname(front)}/${file}`,
      ),
    ),
  );
  return [...new Set(['/', '/nowhere.html', ...fronts, ...inside.flat()])];
};

describe('what a page may do', () => {
  it('is said with every page, and with no wider words than these', async () => {
    const pages = await everyPage();
    expect(pages.length).toBeGreaterThan(12);
    for (const page of pages) {
      const { headers, body } = await get(page);
      const policy = String(headers['content-security-policy']).split('; ');
      expect(policy.filter((one) => !one.startsWith('style-src')).sort(), page).toEqual([
        "base-uri 'none'",
        "connect-src 'self'",
        "default-src 'none'",
        "font-src 'self'",
        "form-action 'none'",
        "frame-ancestors 'none'",
        "img-src 'self' data:",
        "script-src 'self'",
      ]);
      expect(policy.find((one) => one.startsWith('style-src'))).toMatch(
        /^style-src 'self' 'sha256-[\w+/]{43}='$/,
      );
      // No script of its own stands in a page.
      expect(body, page).not.toMatch(/<script(?![^>]* src=)/);
    }
  });

  it('is not given to other sites: no answer may be read, framed or loaded by them', async () => {
    for (const asked of [
      '/',
      '/served/buyer/search-data.js',
      '/served/agent/served-agent.pdf',
      '/-/follow.js',
      '/nowhere',
    ]) {
      const { headers } = await get(asked);
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['x-frame-options']).toBe('DENY');
      expect(headers['x-content-type-options']).toBe('nosniff');
    }
  });

  // What a browser sends for <script src>, <img> and fetch of another site, after Fetch Metadata (W3C).
  it.each([
    ['cross-site', 'script', 403],
    ['cross-site', 'image', 403],
    ['cross-site', 'iframe', 403],
    ['same-site', 'script', 403],
    ['cross-site', 'document', 200],
    ['same-origin', 'script', 200],
    ['none', 'document', 200],
  ])('asked %s for a %s: %i', async (site, dest, status) => {
    const headers = { 'sec-fetch-site': site, 'sec-fetch-dest': dest };
    expect((await get('/served/buyer/search-data.js', headers)).status).toBe(status);
  });
});

describe('strain', () => {
  it('headers longer than any browser sends are refused, and the server stands', async () => {
    const answer = await get('/', { 'x-long': 'x'.repeat(20_000) });
    expect(answer.status).toBe(431);
    const long = await get(`/${'a/'.repeat(7_000)}`);
    expect(long.status).toBe(404);
    expect((await get('/')).status).toBe(200);
  });

  it('many that listen at once push out the oldest, and clients that never end a request hold nobody up', async () => {
    const slow = Array.from({ length: 20 }, () => {
      const socket = connect({ host: '127.0.0.1', port });
      socket.on('error', () => undefined).write('GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: ');
      return socket;
    });
    let ended = 0;
    const streams = Array.from({ length: 70 }, () => {
      const request = ask({ host: '127.0.0.1', port, path: '/-/changes' }, (response) => {
        response.resume().on('end', () => (ended += 1));
      });
      request.on('error', () => undefined).end();
      return request;
    });
    await expect.poll(() => ended, { timeout: 5_000 }).toBe(6);
    expect((await get('/')).status).toBe(200);
    for (const request of streams) request.destroy();
    for (const socket of slow) socket.destroy();
  });
});

describe('other machines and other sites', () => {
  const reaches = (host: string): Promise<boolean> =>
    new Promise((resolve) => {
      const socket = connect({ host, port, timeout: 2000 });
      const finish = (answer: boolean): void => {
        socket.destroy();
        resolve(answer);
      };
      socket
        .on('connect', () => finish(true))
        .on('error', () => finish(false))
        .on('timeout', () => finish(false));
    });

  it('listens on 127.0.0.1 and on no other address of this machine', async () => {
    expect(await reaches('127.0.0.1')).toBe(true);
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .map(({ address }) => address)
      .filter((address) => address !== '127.0.0.1');
    // 127.0.0.2 is this machine too, wherever the whole of 127/8 is its loopback.
    for (const address of [...others, '127.0.0.2']) expect(await reaches(address), address).toBe(false);
  });

  it.each([
    ['a foreign Host', { host: 'evil.example' }],
    ['a Host that begins well', { host: '127.0.0.1.evil.example' }],
    ['a Host that ends well', { host: 'evil.example:127.0.0.1' }],
    ['a foreign Origin', { origin: 'https://evil.example' }],
    ['an Origin that begins well', { origin: 'http://localhost.evil.example' }],
    ['an Origin of no page', { origin: 'null' }],
    ['another port of this machine', { host: 'localhost:4173', origin: 'http://localhost:8080' }],
    ['a name that only ends in a dot', { host: 'localhost.:4173' }],
    ['a name that leads to this machine', { host: '127.0.0.1.nip.example:4173' }],
    ['this machine in another spelling', { host: '2130706433:4173' }],
    ['a user before the Host', { host: '127.0.0.1@evil.example' }],
  ] as const)('are refused: %s', async (_name, headers) => {
    for (const asked of ['/', '/served/buyer/index.html', '/-/changes']) {
      const answer = await get(asked, headers);
      expect(answer.status).toBe(403);
      expect(answer.body).not.toContain('Test Lane');
    }
  });

  it.each<Record<string, string>>([
    { host: 'localhost' },
    { host: '127.0.0.1:4173' },
    { host: 'localhost:4173', origin: 'http://localhost:4173' },
  ])('are not meant by %j', async (headers) => expect((await get('/', headers)).status).toBe(200));
});

describe('addresses', () => {
  it.each([
    '/../../../../etc/passwd',
    '/..%2f..%2f..%2fetc/passwd',
    '/served/..%2f..%2fhouse.yaml',
    '/served/buyer/..%2f..%2f..%2fserved/house.yaml',
    '/served/%2e%2e/%2e%2e/etc/passwd',
    '/served/..%5c..%5cetc%5cpasswd',
    '/served//etc/passwd',
    '/served/house.yaml',
    '/served/file/index.html',
    '/__proto__/x',
    '/constructor',
    '/served/buyer/index.html%00.jpg',
    '/served/%252e%252e/%252e%252e/etc/passwd',
    '/served/buyer/..\\..\\house.yaml',
    '/served/buyer/%2e%2e%5chouse.yaml',
    '/served/buyer/assets/../../../../../../etc/passwd',
    '/served/.photo-cache/x',
    '/served/buyer/.sillplate-made.json',
    '/..;/served/house.yaml',
  ])('%s is not there', async (asked) => {
    const answer = await get(asked);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toMatch(/root:|kind: detached/);
  });

  it.each(['/%', '/%E0%A4%A', '/served/%zz', '/served/buyer/%c0%ae%c0%ae/'])(
    '%s is no valid encoding: not there',
    async (asked) => expect([400, 404]).toContain((await get(asked)).status),
  );

  it.each(['//', '//evil.example/', 'http://evil.example/', 'http://[', '*'])(
    '%s is no path here',
    async (asked) => {
      expect((await get(asked)).status).toBe(400);
      // And the server still stands.
      expect((await get('/')).status).toBe(200);
    },
  );

  it('says no path back as markup', async () => {
    const { body } = await get('/<script>alert(1)</script>');
    expect(body).not.toContain('<script>alert');
  });
});

describe('an edit', () => {
  it('is told to the page and is on it when it asks again', async () => {
    const change = nextChange();
    write(SMALL_HOUSE.replace('Test Lane', 'Renamed Lane'));
    expect(await change).toBe('data: changed\n\n');
    expect((await get('/served/buyer/index.html')).body).toContain('Renamed Lane');
  });

  it('with an error leaves the page as it was, and says where the error is', async () => {
    said = '';
    const change = nextChange();
    write(SMALL_HOUSE.replace('Test Lane', 'Broken Lane').replace('kind: detached', 'kind: detatched'));
    await change;
    const page = await get('/served/buyer/index.html');
    expect(page.body).toContain('Renamed Lane');
    expect(page.body).not.toContain('Broken Lane');
    expect(said).toMatch(/error facts\.choice .*house\.yaml:4:9/);
    expect(said).toContain('served: not changed, see above');
  });

  it('that mends it is shown again', async () => {
    const change = nextChange();
    write(SMALL_HOUSE.replace('Test Lane', 'Mended Lane'));
    await change;
    expect((await get('/served/agent/index.html')).body).toContain('Mended Lane');
  });
});

it('says so where the port is taken', async () => {
  let error = '';
  const status = await serveCommand(
    [home],
    { content: 'content', asOf: '2026-11-20', out: path.join(scratch, 'out'), port },
    {
      out: () => undefined,
      error: (text) => (error += text),
      colour: false,
      progress: quietProgress,
    },
  );
  expect(status).toBe(2);
  expect(error).toBe(
    `error cli.usage  port ${port} can’t be used (EADDRINUSE)\n  do: choose another, for example  --port ${port + 1}\n`,
  );
});
