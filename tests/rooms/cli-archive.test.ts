/** `sillplate archive` and `sillplate verify` of what it wrote, as commands. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { generateX25519Identity, identityToRecipient } from 'age-encryption';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { run } from '../../src/cli.js';
import { type ArchiveOptions, archiveCommand, type MakeReady, size } from '../../src/command-archive.js';
import { verifyCommand } from '../../src/command-verify.js';
import { isBag, verifyBagCommand } from '../../src/command-verify-bag.js';
import { NOWHERE } from '../../src/diagnostics/place.js';
import { locate } from '../../src/diagnostics/report.js';
import { version } from '../../src/version.js';
import { freshFolder, layOut, removeFolders } from '../tools/made-bags.js';
import { quietProgress } from '../tools/quiet-progress.js';

afterAll(removeFolders);

let home: string;

beforeEach(() => {
  home = freshFolder();
  layOut(home, {
    'content/test-lane/house.yaml': 'house: { name: Test Lane }\n',
    'content/test-lane/costs.csv': 'date,amount\r\n2026-04-11,12.00\r\n',
    'out/test-lane/buyer/index.html': '<p>Test Lane</p>\n',
    'out/test-lane/file/test-lane-file.pdf': '%PDF-1.7\n',
  });
});

function terminal() {
  const said = { out: '', error: '' };
  return {
    said,
    terminal: {
      out: (text: string) => {
        said.out += text;
      },
      error: (text: string) => {
        said.error += text;
      },
      colour: false,
      progress: quietProgress,
    },
  };
}

/** Nothing is made: what lies there is archived. */
const asItLies: MakeReady = async ({ name }) => ({
  located: [],
  description: `The record of the house ${name}`,
  exports: [],
  guide: 'How to read this\n',
  notes: [],
});

const nobody = async (): Promise<undefined> => undefined;

async function archive(
  more: Partial<ArchiveOptions> = {},
  makeReady: MakeReady = asItLies,
  ask: (question: string) => Promise<string | undefined> = nobody,
) {
  const options: ArchiveOptions = {
    content: path.join(home, 'content'),
    out: path.join(home, 'out'),
    to: path.join(home, 'archive'),
    asOf: '2026-04-11',
    form: 'folder',
    format: 'text',
    ...more,
  };
  const { said, terminal: quiet } = terminal();
  const status = await archiveCommand(['test-lane'], options, quiet, makeReady, ask);
  return { status, ...said };
}

async function verify(
  file: string,
  more: { format?: 'text' | 'json'; identity?: string } = {},
  answer?: string,
) {
  const { said, terminal: quiet } = terminal();
  const status = await verifyBagCommand(file, { format: 'text', ...more }, quiet, async () => answer);
  return { status, ...said };
}

const bags = (): string[] => {
  const folder = path.join(home, 'archive', 'test-lane');
  return existsSync(folder) ? readdirSync(folder).sort() : [];
};
const at = (...parts: string[]): string => path.join(home, 'archive', 'test-lane', ...parts);

describe('a house is archived', () => {
  it('with its folder, its packets, exports and the guide, and says that it is private', async () => {
    const { status, out, error } = await archive({}, async () => ({
      located: [],
      description: 'The record of Test Lane',
      exports: [{ path: 'costs.journal', bytes: Buffer.from('; a journal\n') }],
      guide: 'read it\n',
      notes: [],
    }));
    expect(error).toBe('');
    expect(status).toBe(0);
    expect(out).toContain('archive/test-lane/test-lane-2026-04-11');
    expect(out).toContain('6 files');
    expect(out).toContain('It is private');
    const data = at('test-lane-2026-04-11', 'data');
    expect(readdirSync(data, { recursive: true, encoding: 'utf8' }).sort()).toEqual([
      'exports',
      'exports/costs.journal',
      'how-to-read.txt',
      'originals',
      'originals/costs.csv',
      'originals/house.yaml',
      'packets',
      'packets/buyer',
      'packets/buyer/index.html',
      'packets/file',
      'packets/file/test-lane-file.pdf',
    ]);
    expect(readFileSync(at('test-lane-2026-04-11', 'bag-info.txt'), 'utf8')).toContain(
      `Bag-Software-Agent: sillplate ${version()}\n`,
    );
    const found = await verify(at('test-lane-2026-04-11'));
    expect(found.out).toContain('a bag of 2026-04-11: 6 files');
    expect(found.out).toContain('It is whole');
    expect(found.status).toBe(0);
  });

  it('once for a state, and again for the next', async () => {
    await archive();
    const same = await archive();
    expect(same.out).toContain('nothing has changed since');
    expect(same.out).toContain('was found whole; no bag was made');
    expect(same.status).toBe(0);
    expect(bags()).toEqual(['test-lane-2026-04-11']);
    layOut(home, { 'content/test-lane/house.yaml': 'house: { name: Test Road }\n' });
    expect((await archive()).out).toContain('the bag before it is test-lane-2026-04-11');
    expect(bags()).toEqual(['test-lane-2026-04-11', 'test-lane-2026-04-11-2']);
    const json = JSON.parse((await archive({ format: 'json' })).out);
    expect(json.bags).toEqual([{ house: 'test-lane', bag: expect.stringContaining('-2'), written: false }]);
  });

  it('not without packets, with an error of the house, or over itself', async () => {
    const failed = await archive({ out: path.join(home, 'nowhere') });
    expect(failed.error).toContain('there are no packets of test-lane');
    expect(failed.error).toContain('sillplate build test-lane');
    expect(failed.status).toBe(1);
    const located = locate(
      [{ code: 'facts.date', severity: 'error', message: 'there is no month 13', hints: ['write 12'] }],
      NOWHERE,
    );
    const notReady: MakeReady = async () => ({ located, description: '', exports: [], guide: '', notes: [] });
    const faulty = await archive({}, notReady);
    expect(faulty.error).toContain('no month 13');
    // The way out stands below the errors, where it is read last.
    expect(faulty.error.slice(faulty.error.indexOf('no month 13'))).toMatch(
      /test-lane: nothing was archived.*\n.*sillplate check test-lane /u,
    );
    expect(faulty.status).toBe(1);
    const record = JSON.parse((await archive({ format: 'json' }, notReady)).out);
    expect(record.bags).toEqual([{ house: 'test-lane', bag: null, written: false }]);
    const inside = await archive({ to: path.join(home, 'content', 'test-lane', 'archive') });
    expect(inside.error).toContain('archive.place');
    expect(inside.status).toBe(1);
    expect(bags()).toEqual([]);
  });

  it('anew where the bag of this state was damaged, and says so', async () => {
    await archive();
    writeFileSync(at('test-lane-2026-04-11', 'data', 'originals', 'house.yaml'), '');
    const { status, out, error } = await archive();
    expect(error).toContain('warning archive.bag');
    expect(error).toContain('is no longer whole (2 things in it differ); the state is archived anew');
    expect(error).toMatch(/sillplate verify \S*test-lane-2026-04-11\n/u);
    expect(out).toContain('test-lane-2026-04-11-2');
    expect(status).toBe(0);
  });

  it('with one line on what was left out and on each packet of another day, as records too', async () => {
    layOut(home, { 'content/test-lane/.DS_Store': 'x', 'content/test-lane/imports/.unfinished.json': '{}' });
    const message = 'the buyer packet in it is of 2026-01-02; the facts may have changed since';
    const ready: MakeReady = async (house) => ({
      ...(await asItLies(house)),
      notes: [{ code: 'archive.bag', severity: 'note', message, hints: ['type  sillplate build test-lane'] }],
    });
    const { out, status } = await archive({}, ready);
    expect(status).toBe(0);
    expect(out.split('\n')).toContain(`  ${message}`);
    expect(out.split('\n')).toContain(
      '  left out, being no record of anybody’s: .DS_Store, imports/.unfinished.json',
    );
    expect(out).toContain('sillplate build test-lane');
    expect(existsSync(at('test-lane-2026-04-11', 'data', 'originals', '.DS_Store'))).toBe(false);
    const { problems } = JSON.parse((await archive({ format: 'json' }, ready)).out);
    expect(problems).toHaveLength(2);
    for (const told of [message, expect.stringContaining('left out')])
      expect(problems).toContainEqual(
        expect.objectContaining({ code: 'archive.bag', severity: 'note', message: told }),
      );
  });

  it('not with a link that leads out', async () => {
    symlinkSync('/etc/hostname', path.join(home, 'content', 'test-lane', 'link.txt'));
    const { status, error } = await archive();
    expect(error).toContain('link.txt is a link that leads out');
    expect(status).toBe(1);
    expect(bags()).toEqual([]);
  });

  it('and a house that is not there is told', async () => {
    const { status, error } = await archive({ content: path.join(home, 'empty') });
    expect(error).toContain('there is no folder');
    expect(status).toBe(1);
  });
});

describe('a house that is made ready', () => {
  const DIGEST = '0123 4567 89ab';
  const packetOf = (edition: string, asOf: string): string =>
    JSON.stringify({
      form: 'sillplate-facts-1',
      program: 'sillplate 0.0.0',
      house: { folder: 'test-lane', name: 'Test Lane', place: '' },
      edition,
      title: edition,
      asOf,
      digest: DIGEST,
      facts: [],
    });

  /** All packets but the house file lie there. */
  function made(): void {
    layOut(home, {
      'content/test-lane/house.yaml':
        'house: { name: Test Lane, address: { city: Fallow Mills, state: OH }, kind: detached, built: 2001 }\n',
      'content/test-lane/costs.csv':
        'date,payee,what,amount,bucket\n2026-01-03,Tollgate,boards,12.00,repair\n',
      'out/test-lane/agent/facts.json': packetOf('agent', '2026-04-11'),
      'out/test-lane/visit/facts.json': packetOf('visit', '2026-04-11'),
      'out/test-lane/buyer/facts.json': packetOf('buyer', '2026-01-02'),
      'out/test-lane/care/index.html': '<p>of a time before there was such a file</p>',
    });
  }

  async function typed(...words: readonly string[]) {
    const { said, terminal: quiet } = terminal();
    const folders = ['content', 'out'].flatMap((one) => [`--${one}`, path.join(home, one)]);
    const to = ['--to', path.join(home, 'archive'), '--as-of', '2026-04-11'];
    const status = await run(['archive', 'test-lane', ...folders, ...to, ...words], quiet);
    return { status, ...said };
  }

  it('says of which day each packet is, where that is another than the bag’s, and the guide of all', async () => {
    made();
    const { status, out, error } = await typed();
    expect([status, error]).toEqual([0, '']);
    expect(out.split('\n')).toEqual(
      expect.arrayContaining([
        '  the buyer packet in it is of 2026-01-02; the facts may have changed since',
        '  no day can be read of the care packet in it; the facts may have changed since',
      ]),
    );
    expect(out.match(/ packet in it/gu)).toHaveLength(2);
    expect(out.match(/sillplate build test-lane/gu)).toHaveLength(1);
    const guide = readFileSync(at('test-lane-2026-04-11', 'data', 'how-to-read.txt'), 'utf8');
    const plain = guide.replace(/\s+/gu, ' ');
    expect(plain).toContain(`; as of 2026-01-02; digest ${DIGEST} care/`);
    expect(plain).toMatch(/ file\/ .*; as of 2026-04-11; digest [0-9a-f ]{14} exports\//u);
    // What was handed out is kept as it was.
    const buyer = at('test-lane-2026-04-11', 'data', 'packets', 'buyer', 'facts.json');
    expect(readFileSync(buyer, 'utf8')).toBe(packetOf('buyer', '2026-01-02'));
    const { bags: same, problems } = JSON.parse((await typed('--format', 'json')).out);
    expect(same).toMatchObject([{ written: false, bag: expect.stringContaining('test-lane-2026-04-11') }]);
    expect(problems).toMatchObject([{ severity: 'note' }, { severity: 'note' }]);
  });

  it('and is not, for one row without a bucket, is told so with the way out', async () => {
    made();
    layOut(home, {
      'content/test-lane/costs.csv': 'date,payee,what,amount,bucket\n2026-01-03,Tollgate,boards,12.00,\n',
    });
    const { status, out, error } = await typed();
    expect([status, out]).toEqual([1, '']);
    expect(error.slice(error.indexOf('costs.csv'))).toMatch(
      /\ntest-lane: nothing was archived.*\n.*sillplate check test-lane --content /u,
    );
    expect(bags()).toEqual([]);
  });
});

describe('a sealed bag', () => {
  it('is written for a key, and verified with it', async () => {
    const identity = await generateX25519Identity();
    const { status, out } = await archive({ sealFor: [await identityToRecipient(identity)] });
    expect(status).toBe(0);
    expect(out).toContain('Without the secret key nobody opens it');
    expect(bags()).toEqual(['test-lane-2026-04-11.tar.age']);
    const file = at('test-lane-2026-04-11.tar.age');
    const key = path.join(home, 'key.txt');
    writeFileSync(key, `# a key\n${identity}\n`);
    expect((await verify(file, { identity: key })).status).toBe(0);
    const without = await verify(file);
    expect([without.status, without.out]).toEqual([2, '']);
    expect(without.error).toContain('--identity FILE');
    expect((await verify(file, { identity: path.join(home, 'no-key') })).error).toContain('is not there');
  });

  it('is written with a passphrase that was typed twice, and asked for it', async () => {
    const asked: string[] = [];
    const { status, out } = await archive({ sealWithPassphrase: true }, undefined, async (question) => {
      asked.push(question);
      return 'four plain words here';
    });
    expect([status, asked]).toEqual([0, ['Passphrase: ', 'The same again: ']]);
    expect(out).toContain('Without the passphrase nobody opens it');
    expect(out).not.toContain('four plain words');
    const file = at('test-lane-2026-04-11.tar.age');
    expect((await verify(file, {}, 'four plain words here')).status).toBe(0);
    expect((await verify(file, {}, 'other words')).error).toContain('not opened by that passphrase');
    expect((await verify(file)).error).toContain('none was typed');
  });

  it.each<[string, Partial<ArchiveOptions>, readonly (string | undefined)[]]>([
    ['nobody sits at the terminal', { sealWithPassphrase: true }, [undefined]],
    ['an empty passphrase', { sealWithPassphrase: true }, ['']],
    ['two passphrases', { sealWithPassphrase: true }, ['one', 'other']],
    ['no recipient', { sealFor: ['age1nonsense'] }, []],
    ['a secret key as a recipient', { sealFor: ['AGE-SECRET-KEY-1XXXX'] }, []],
    ['both', { sealFor: ['age1x'], sealWithPassphrase: true }, []],
    ['a ZIP', { sealFor: ['age1x'], form: 'zip' }, []],
  ])('is refused for %s, and nothing is written', async (_what, options, answers) => {
    const left = [...answers];
    const { status, error } = await archive(options, undefined, async () => left.shift());
    expect(error).toContain('cli.usage');
    expect(error).toContain('do: ');
    expect(error).not.toContain('AGE-SECRET-KEY-1XXXX');
    expect(status).toBe(2);
    expect(bags()).toEqual([]);
  });
});

describe('verify', () => {
  it('takes folders and packed bags for bags, and a PDF for a packet', async () => {
    await archive();
    expect(await isBag(at('test-lane-2026-04-11'))).toBe(true);
    for (const name of ['a.zip', 'a.ZIP', 'a.tar', 'a.tar.age']) expect(await isBag(name)).toBe(true);
    expect(await isBag('packet.pdf')).toBe(false);
    const { said, terminal: quiet } = terminal();
    const options = {
      content: path.join(home, 'content'),
      out: path.join(home, 'out'),
      format: 'text',
    } as const;
    expect(await verifyCommand(at('test-lane-2026-04-11'), undefined, options, quiet)).toBe(0);
    expect(said.out).toContain('It is whole');
  });

  it('names what differs, in words and as records', async () => {
    await archive();
    const bag = at('test-lane-2026-04-11');
    writeFileSync(path.join(bag, 'data', 'originals', 'house.yaml'), 'house: { name: Test Line }\n');
    writeFileSync(path.join(bag, 'data', 'more.txt'), 'more');
    const { status, out } = await verify(bag);
    expect(status).toBe(1);
    expect(out).toContain('error archive.bag');
    expect(out).toContain('data/originals/house.yaml was changed');
    expect(out).toContain('data/more.txt was added');
    expect(out).toContain('It is not whole: 3 things differ');
    expect(out).toContain('do: ');
    const json = JSON.parse((await verify(bag, { format: 'json' })).out);
    expect(json).toMatchObject({
      verdict: 'differs',
      algorithms: ['sha256'],
      identifier: 'test-lane-2026-04-11',
    });
    expect(json.problems).toHaveLength(3);
    expect(json.problems[0]).toMatchObject({ code: 'archive.bag', severity: 'error' });
  });

  it('says of a bag that holds nothing that it does', async () => {
    const hollow = layOut(path.join(home, 'bag'), {
      'bagit.txt': 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n',
      'manifest-sha256.txt': '',
    });
    mkdirSync(path.join(hollow, 'data'));
    const { status, out } = await verify(hollow);
    expect(out).toContain('warning archive.bag');
    expect(out).toContain('It holds nothing');
    expect(out).not.toContain('It is whole');
    expect(status).toBe(0);
  });

  it('says what is no bag, and ends with 2', async () => {
    mkdirSync(path.join(home, 'hollow'));
    const { status, out, error } = await verify(path.join(home, 'hollow'));
    expect([status, out]).toEqual([2, '']);
    expect(error).toContain('has no bagit.txt');
    expect(JSON.parse((await verify(path.join(home, 'hollow'), { format: 'json' })).out)).toMatchObject({
      verdict: 'no-bag',
    });
    expect((await verify(path.join(home, 'no.zip'))).error).toContain('is not there');
  });

  it('shows no name that could act on a terminal, and not a thousand problems', async () => {
    await archive();
    const bag = at('test-lane-2026-04-11');
    writeFileSync(path.join(bag, 'data', 'a\u001b[31mred'), '');
    for (let n = 0; n < 120; n++) writeFileSync(path.join(bag, 'data', `more-${n}.txt`), '');
    const { out } = await verify(bag);
    expect(out).not.toContain('\u001b');
    expect(out).toMatch(/… and \d+ more; all of them with {2}--format json/u);
    expect(JSON.parse((await verify(bag, { format: 'json' })).out).problems.length).toBeGreaterThan(120);
  });

  it('says sizes as people do', () => {
    expect([999, 12_345, 1_234_567, 2_147_483_648].map(size)).toEqual([
      '999 bytes',
      '12 kB',
      '1.2 MB',
      '2.15 GB',
    ]);
  });
});

describe('a passphrase', () => {
  const noPty =
    spawnSync('python3', ['-c', 'import pty']).status === 0 ? '' : ' (skipped: python3 not on this machine)';
  it.skipIf(noPty !== '')(`is typed on a terminal and never shown${noPty}`, () => {
    const at = new URL('../../dist/ask-passphrase.js', import.meta.url).href;
    const script = `const { askPassphrase } = await import(${JSON.stringify(at)}); process.stdout.write('<' + (await askPassphrase('Say it: ')).length + '>');`;
    const python = `
import os, pty, sys, time
pid, fd = pty.fork()
if pid == 0:
    os.execvp(${JSON.stringify(process.execPath)}, ['node', '--input-type=module', '-e', ${JSON.stringify(script)}])
seen = b''
while b'Say it: ' not in seen:
    seen += os.read(fd, 1000)
os.write(fd, b'sesamx\\x7fe\\r')
try:
    while True:
        part = os.read(fd, 1000)
        if not part: break
        seen += part
except OSError:
    pass
sys.stdout.write(seen.decode())
`;
    const run = spawnSync('python3', ['-c', python], { encoding: 'utf8', timeout: 30_000 });
    expect(run.stdout, run.stderr).toContain('Say it: ');
    expect(run.stdout).toContain('<6>');
    expect(run.stdout).not.toMatch(/sesam|\*/u);
  });

  it('is not waited for where nobody can type it', () => {
    const at = new URL('../../dist/ask-passphrase.js', import.meta.url).href;
    const script = `const { askPassphrase } = await import(${JSON.stringify(at)}); process.stdout.write(String(await askPassphrase('Say it: ')));`;
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
      encoding: 'utf8',
      input: 'x\n',
    });
    expect(run.stdout).toBe('undefined');
  });
});
