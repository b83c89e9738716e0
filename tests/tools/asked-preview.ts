/** The preview of a house, asked by its own door for whatever an address can name. */
import { request } from 'node:http';
import path from 'node:path';
import { serveCommand } from '../../src/command-serve.js';
import { quietProgress } from './quiet-progress.js';

interface Answer {
  readonly status: number;
  readonly bytes: Buffer;
}

export interface AskedPreview {
  /** Sends the address as it stands; a browser's own tidying would hide what is asked here. */
  readonly get: (address: string) => Promise<Answer>;
  /** Address → what came, for all that the pages lead to, from the list of houses on. */
  readonly everything: () => Promise<Map<string, Buffer>>;
  readonly stop: () => Promise<void>;
}

/** `out` is the folder that editions are built in: the photo cache lies there. */
export async function previewOf(folder: string, out: string, asOf: string): Promise<AskedPreview> {
  let said = '';
  const tell = (text: string): void => {
    said += text;
  };
  let end: () => Promise<void> = async () => undefined;
  const address = await new Promise<string>((resolve, reject) => {
    const ended = serveCommand(
      [folder],
      { content: path.dirname(folder), asOf, out, port: 0 },
      { out: tell, error: tell, colour: false, progress: quietProgress },
      (stop, at) => {
        end = async () => {
          await stop();
          await ended;
        };
        resolve(at);
      },
    );
    ended.then(() => reject(new Error(said)), reject);
  });
  const port = Number(new URL(address).port);
  const get = (asked: string): Promise<Answer> =>
    new Promise((resolve, reject) => {
      request({ host: '127.0.0.1', port, path: asked }, (response) => {
        const pieces: Buffer[] = [];
        response.on('data', (piece: Buffer) => pieces.push(piece));
        response.on('end', () => resolve({ status: response.statusCode ?? 0, bytes: Buffer.concat(pieces) }));
      })
        .on('error', reject)
        .end();
    });
  const everything = async (): Promise<Map<string, Buffer>> => {
    const found = new Map<string, Buffer>();
    const open = ['/'];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (found.has(at)) continue;
      const { status, bytes } = await get(at);
      if (status !== 200) throw new Error(`${at} is led to and answers ${status}`);
      found.set(at, bytes);
      if (/\/$|\.(html|css|js)$/u.test(at)) open.push(...addressesIn(bytes.toString('utf8'), at));
    }
    return found;
  };
  return { get, everything, stop: end };
}

/** What a page or a style sheet leads to on the same server. */
function addressesIn(text: string, from: string): string[] {
  const links = [
    ...text.matchAll(/(?:href|src|poster)="([^"#]+)/gu),
    ...text.matchAll(/srcset="([^"]+)"/gu),
    ...text.matchAll(/url\(["']?([^"')]+)/gu),
  ].flatMap(([, one = '']) => one.split(/,\s+/u).map((each) => each.trim().split(/\s/u)[0] ?? ''));
  const home = 'http://preview.invalid';
  return links
    .filter((link) => URL.canParse(link, `${home}${from}`))
    .map((link) => new URL(link, `${home}${from}`))
    .filter(({ origin, pathname }) => origin === home && pathname !== '/-/changes')
    .map(({ pathname }) => pathname);
}
