/** A packet that went out, held against its folder: what `sillplate verify` finds, on a made house. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFName, PDFString } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildHouse } from '../../src/build.js';
import { run } from '../../src/cli.js';
import { factsInPdf } from '../../src/data-in-pdf.js';
import { leastMs } from '../tools/least-ms.js';
import { quietProgress } from '../tools/quiet-progress.js';

const YAML = `house:
  name: Test Lane
  address: { city: Fallow Mills, state: OH }
  kind: detached
  built: 2001
levels:
  - { id: main, name: Main level, grade: above, size: 30' x 20' }
rooms:
  - { id: hall, name: Hall, level: main, use: hall, size: 10' x 8' }
systems:
  - { id: furnace, is: "furnace, gas", installed: 2015 }
private-notes: [the key is under the mat]
`;

let home: string;
let folder: string;
let pdf: string;

const written = (name: string, bytes: Uint8Array | string): string => {
  const file = path.join(home, name);
  writeFileSync(file, bytes);
  return file;
};

/** A PDF of one empty sheet with these data attached. */
async function withData(name: string, facts: unknown): Promise<string> {
  const doc = await PDFDocument.create();
  doc.addPage();
  await doc.attach(new TextEncoder().encode(JSON.stringify(facts)), 'facts.json', {});
  return written(name, await doc.save());
}

/** The PDF changed by a library as somebody else's program would. */
async function changed(name: string, change: (doc: PDFDocument) => void): Promise<string> {
  const doc = await PDFDocument.load(readFileSync(pdf), { updateMetadata: false });
  change(doc);
  return written(name, await doc.save());
}

/** Bytes that begin as a PDF does and hold these streams. */
const streamed = (...contents: readonly Buffer[]): Buffer =>
  Buffer.concat([
    Buffer.from('%PDF-1.7\n'),
    ...contents.flatMap((one) => [Buffer.from('stream\n'), deflateSync(one), Buffer.from('\nendstream\n')]),
  ]);

async function verify(...words: string[]) {
  let out = '';
  let error = '';
  const terminal = {
    out: (text: string) => {
      out += text;
    },
    error: (text: string) => {
      error += text;
    },
    colour: false,
    progress: quietProgress,
  };
  const common = ['--content', path.join(home, 'content'), '--out', path.join(home, 'out')];
  const status = await run(['verify', ...words, ...common], terminal);
  return { status, out, error };
}

beforeAll(async () => {
  home = mkdtempSync(path.join(tmpdir(), 'sillplate-verify-'));
  folder = path.join(home, 'content', 'test-lane');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'house.yaml'), YAML);
  const out = path.join(home, 'out');
  const { made, located } = await buildHouse({
    folder,
    shown: 'content/test-lane',
    asOf: '2026-06-30',
    editions: ['buyer'],
    out,
    outShown: 'out',
    paper: 'a4',
  });
  expect(located.filter(({ diagnostic }) => diagnostic.severity === 'error')).toEqual([]);
  expect(made).toHaveLength(1);
  pdf = path.join(out, 'test-lane', 'buyer', 'test-lane-buyer.pdf');
});

afterAll(() => rmSync(home, { recursive: true, force: true }));

describe('a PDF is held against its folder', () => {
  it('and is what it makes: another day, edition or paper need not be typed', async () => {
    const { status, out } = await verify(pdf);
    expect(out).toContain('Buyer packet of Test Lane, as of 2026-06-30');
    expect(out).toContain('byte for byte');
    expect(status).toBe(0);
  });

  it('and the facts that changed since are told, old and new', async () => {
    const later = path.join(home, 'later', 'test-lane');
    mkdirSync(later, { recursive: true });
    writeFileSync(
      path.join(later, 'house.yaml'),
      YAML.replace('2015', '2017').replace('name: Hall', 'name: Entry'),
    );
    const { status, out } = await verify(pdf, later);
    expect(status).toBe(1);
    expect(out).toContain('This is not what');
    expect(out).toMatch(/in the PDF {5}.*2015.*\n {4}in the folder {2}.*2017/u);
    expect(out).toMatch(/in the PDF {5}.*Hall.*\n {4}in the folder {2}.*Entry/u);
    const json = JSON.parse((await verify(pdf, later, '--format', 'json')).out);
    expect(json).toMatchObject({ verdict: 'facts', house: 'test-lane', edition: 'buyer' });
    expect(json.changes.length).toBeGreaterThan(1);
    expect(json.digest).not.toBe(json.digestNow);
  });

  it('and a fact that is new or gone is told as not said', async () => {
    const later = path.join(home, 'without', 'test-lane');
    mkdirSync(later, { recursive: true });
    writeFileSync(path.join(later, 'house.yaml'), YAML.replace(/systems:.*/su, ''));
    const { out } = await verify(pdf, later);
    expect(out).toMatch(/in the PDF {5}.*urnace.*\n {4}in the folder {2}not said/u);
  });

  it('under another folder name, too', async () => {
    const renamed = path.join(home, 'elsewhere', 'renamed');
    cpSync(folder, renamed, { recursive: true });
    expect(await verify(pdf, renamed)).toMatchObject({
      status: 0,
      out: expect.stringContaining('byte for byte'),
    });
  });

  it('and what was added behind it is told, and vouched for by nobody', async () => {
    const file = written('added.pdf', Buffer.concat([readFileSync(pdf), Buffer.from('% a signature\n')]));
    const { status, out } = await verify(file);
    expect(out).toContain('begins with what');
    expect(out).toContain('14 bytes were added behind it');
    expect(out).toContain('may differ');
    expect(status).toBe(1);
    expect(JSON.parse((await verify(file, '--format', 'json')).out)).toMatchObject({
      verdict: 'added-to',
      bytesAdded: 14,
    });
  });

  it.each([
    ['saved anew', () => undefined],
    ['painted on', (doc: PDFDocument) => doc.getPages()[1]?.drawText('new roof', { x: 90, y: 90 })],
    ['with a sheet more', (doc: PDFDocument) => doc.addPage()],
    ['turned', (doc: PDFDocument) => doc.catalog.Pages().set(PDFName.of('Rotate'), doc.context.obj(180))],
    ['with other words to be read aloud', (doc: PDFDocument) => doc.setLanguage('xx')],
    ['filled in', (doc: PDFDocument) => doc.getForm().getTextField('received-on').setText('2026-07-01')],
  ])('and of another file nothing but its data is vouched for: %s', async (name, change) => {
    const file = await changed(`${name.replaceAll(' ', '-')}.pdf`, (doc) => void change(doc));
    const { status, out } = await verify(file);
    expect(out).toContain('The facts in its data are those');
    expect(out).toContain('What its sheets show is not proved');
    expect(out).not.toContain('byte for byte');
    expect(status).toBe(1);
  });

  it('and a fact said twice, a false digest and another folder’s photo are told', async () => {
    const facts = JSON.parse(readFileSync(path.join(path.dirname(pdf), 'facts.json'), 'utf8'));
    const twice = { ...facts, facts: [{ ...facts.facts[4], says: 'a new roof' }, ...facts.facts] };
    expect((await verify(await withData('twice.pdf', twice))).out).toContain('a new roof');
    const digest = { ...facts, digest: 'dead beef dead' };
    expect((await verify(await withData('digest.pdf', digest))).out).toMatch(/in the PDF {5}dead beef dead/u);
    const forged = {
      ...facts,
      digest: `${facts.digest}\n  This is what content/test-lane makes, byte for byte.`,
    };
    expect((await verify(await withData('forged.pdf', forged))).status).toBe(2);
  });

  it('and what is private is told to nobody who did not ask for it', async () => {
    const facts = JSON.parse(readFileSync(path.join(path.dirname(pdf), 'facts.json'), 'utf8'));
    const file = await withData('claims-to-be-the-file.pdf', { ...facts, edition: 'file' });
    for (const words of [[], ['--format', 'json']]) {
      const { out, status } = await verify(file, ...words);
      expect(out).not.toContain('the key is under the mat');
      expect(status).toBe(1);
    }
    // The text ends after thirty facts.
    expect((await verify(file, '--private', '--format', 'json')).out).toContain('the key is under the mat');
  });
});

/**
 * The PDF with its receipt filled in as a viewer saves it: the file as it was, and behind it the field once more, a table
 * of where it stands and a trailer that names the table before it (ISO 32000-1, 7.5.6).
 */
async function filledIn(bytes: Buffer): Promise<Buffer> {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  const { ref, dict } = doc.getForm().getTextField('received-on').acroField;
  dict.set(PDFName.of('V'), PDFString.of('2026-07-01'));
  const before = /startxref\s+(\d+)\s+%%EOF\s*$/u.exec(bytes.subarray(-64).toString('latin1'))?.[1];
  const root = doc.context.trailerInfo.Root?.toString();
  const at = bytes.length + 1;
  const object = `\n${ref.objectNumber} 0 obj\n${dict.toString()}\nendobj\n`;
  const entry = `${String(at).padStart(10, '0')} 00000 n \n`;
  const table = `xref\n${ref.objectNumber} 1\n${entry}`;
  const trailer = `trailer\n<< /Size ${doc.context.largestObjectNumber + 1} /Root ${root} /Prev ${before} >>\n`;
  const tail = `${object}${table}${trailer}startxref\n${bytes.length + object.length}\n%%EOF\n`;
  return Buffer.concat([bytes, Buffer.from(tail, 'latin1')]);
}

describe('a PDF that was delivered', () => {
  const CONDITIONS = `conditions:
  - { what: gate sticks, since: as bought }
  - { what: garage floor has a crack, since: as bought }
  - { what: painted cellar windows flake, since: as bought }
`;
  let house: string;
  let given: Buffer;

  async function deliver(edition: string, ...words: string[]): Promise<Buffer> {
    const quiet = { out: () => undefined, error: () => undefined, colour: false, progress: quietProgress };
    const days = ['--as-of', '2026-06-12', '--on', '2026-06-13', '--out', path.join(home, 'out')];
    expect(
      await run(['deliver', house, '--edition', edition, '--to', 'R. Lowe', ...days, ...words], quiet),
    ).toBe(0);
    const deliveries = path.join(house, 'deliveries');
    const name = readdirSync(deliveries).find((one) => one.includes(`-${edition}-`)) ?? '';
    return readFileSync(path.join(deliveries, name, `test-lane-${edition}.pdf`));
  }

  beforeAll(async () => {
    house = path.join(home, 'delivered', 'test-lane');
    mkdirSync(house, { recursive: true });
    writeFileSync(path.join(house, 'house.yaml'), `${YAML}${CONDITIONS}`);
    given = await deliver('buyer');
  });
  /** The folder makes another packet by now: one row was put in before the others. */
  const changeFolder = (): void => {
    const more = CONDITIONS.replace(
      'conditions:\n',
      '$&  - { what: fence post leans, since: found in May }\n',
    );
    writeFileSync(path.join(house, 'house.yaml'), `${YAML}${more}`);
  };
  const AT = 'what the folder made, byte for byte, delivered on 13 June 2026 to R. Lowe';

  it('and comes back with something added is known, before and after its folder has changed', async () => {
    // 65 bytes: shorter than any form that is filled in.
    const trailed = Buffer.concat([given, Buffer.from(`\n%${'x'.repeat(62)}\n`)]);
    expect(trailed.length - given.length).toBe(65);
    const update = await filledIn(given);
    const filled = await PDFDocument.load(update, { updateMetadata: false });
    expect(filled.getForm().getTextField('received-on').getText()).toBe('2026-07-01');
    const signedToo = Buffer.concat([update, Buffer.from('% once more\n%%EOF\n')]);
    const files = [trailed, update, signedToo].map(
      (bytes, n) => [written(`back-${n}.pdf`, bytes), bytes.length - given.length] as const,
    );
    for (const [file] of files) {
      const { out, status } = await verify(file, house);
      expect(out).toContain(`It begins with ${AT}`);
      expect(out).toContain('This begins with what');
      expect(status).toBe(1);
    }
    changeFolder();
    for (const [file, more] of files) {
      const { out, status } = await verify(file, house);
      expect(out).toContain(`It begins with ${AT}`);
      expect(out).toContain(`Since then ${more} bytes were added behind it`);
      expect(out).toContain('what it shows may differ from what was delivered');
      expect(out).toContain('This is not what');
      expect(status).toBe(1);
      const json = JSON.parse((await verify(file, house, '--format', 'json')).out);
      expect(json.delivered).toMatchObject([{ to: ['R. Lowe'], on: '2026-06-13', bytesAdded: more }]);
    }
    const whole = await verify(written('back.pdf', given), house);
    expect(whole.out).toContain(`It is ${AT}`);
    expect(whole.out).not.toContain('added behind it');
  });

  it('and was changed within is not, whatever is added behind it', async () => {
    const inside = Buffer.from(given);
    // Within the comment of the second line, which no reader looks at.
    const at = inside.indexOf('\n%') + 3;
    expect(at).toBeLessThan(20);
    inside[at] = (inside[at] ?? 0) ^ 1;
    const file = written('inside.pdf', Buffer.concat([inside, Buffer.from('\n% added\n%%EOF\n')]));
    expect((await verify(file, house)).out).not.toContain('delivered on');
    const cut = written('cut.pdf', given.subarray(0, -6));
    expect((await verify(cut, house)).out).not.toContain('delivered on');
  });

  it('differs by the row that was put in, not by those behind it nor by the list of what changed since', async () => {
    changeFolder();
    const file = written('row.pdf', given);
    const { out } = await verify(file, house);
    const { changes } = JSON.parse((await verify(file, house, '--format', 'json')).out) as {
      changes: { id: string; was?: string; is?: string }[];
    };
    expect(out).toContain('Fence post leans');
    expect(out).not.toContain('Changes since earlier deliveries');
    const inTable = changes.filter(({ id }) => id.startsWith('condition-'));
    expect(inTable).toHaveLength(1);
    expect(inTable[0]?.was).toBeUndefined();
    expect(changes.filter(({ id }) => id.startsWith('changes'))).toEqual([]);
    // Each of the others names the new row as well, or counts it.
    for (const { is = '' } of changes) expect(is).toMatch(/fence|four/iu);
  });

  it('as the house file: its own list of deliveries is told as little, and its bytes are others all the same', async () => {
    const own = await deliver('file', '--private');
    const { out, status } = await verify(written('own.pdf', own), house, '--private');
    expect(out).toContain(`It is ${AT}`);
    expect(out).toContain('one fact differs');
    expect(out).toMatch(/\n {2}Deliveries\n {4}in the PDF .*statements?\n {4}in the folder .*statements?\n/u);
    expect(out).not.toContain('This is what');
    expect(status).toBe(1);
  });
});

describe('what is no packet', () => {
  const refused = async (file: string, words: string): Promise<void> => {
    const { status, out, error } = await verify(file);
    expect(error).toContain(words);
    expect(error).toContain('do: ');
    expect(out).toBe('');
    expect(status).toBe(2);
  };

  it('is refused with what to do', async () => {
    await refused(path.join(home, 'nothing.pdf'), 'there is no file');
    await refused(home, 'has no bagit.txt');
    await refused(written('text.pdf', 'Dear buyer'), 'is no PDF');
    await refused(written('empty.pdf', ''), 'is no PDF');
    await refused(written('half.pdf', readFileSync(pdf).subarray(0, 9000)), 'carries no packet’s data');
    await refused(written('locked.pdf', '%PDF-1.7\n<</Encrypt 5 0 R>>'), 'is locked with a password');
    const other = Buffer.from('{"form":1}');
    await refused(written('other.pdf', streamed(other)), 'carries no packet’s data');
    const facts = readFileSync(path.join(path.dirname(pdf), 'facts.json'));
    const lie = Buffer.from(facts.toString('utf8').replace('Test Lane', 'Test Road'));
    await refused(written('both.pdf', streamed(facts, lie)), 'data of several packets');
  });

  it('is a file whose data name a place outside of the houses, an edition or a day there is not', async () => {
    const facts = JSON.parse(readFileSync(path.join(path.dirname(pdf), 'facts.json'), 'utf8'));
    for (const [i, false_] of [
      { ...facts, house: { ...facts.house, folder: '../../etc' } },
      { ...facts, edition: 'everything' },
      { ...facts, asOf: '2026-02-30' },
      { ...facts, form: 'other' },
      { ...facts, facts: [{ id: 7 }] },
      [],
    ].entries()) {
      await refused(await withData(`false-${i}.pdf`, false_), 'carries no packet’s data');
    }
  });

  it('is a file that swells without end, or never ends, and is answered at once', async () => {
    const json = Buffer.concat([
      Buffer.from('{"form":"sillplate-facts-1","x":"'),
      Buffer.alloc(200 * 2 ** 20, 0x61),
    ]);
    const noise = Buffer.alloc(20 * 2 ** 20, 'stream\nx\u009c junk endstream ');
    const begun = performance.now();
    const before = process.memoryUsage().rss;
    expect(factsInPdf(streamed(json))).toBe('no-data');
    expect(factsInPdf(Buffer.concat([Buffer.from('%PDF-1.7\n'), noise]))).toBe('no-data');
    expect(performance.now() - begun).toBeLessThan(8000);
    expect(process.memoryUsage().rss - before).toBeLessThan(500 * 2 ** 20);
  });

  it('is a few megabytes with many streams that swell, or many that never end', async () => {
    const swelling = deflateSync(Buffer.concat([Buffer.from('{'), Buffer.alloc(16 * 2 ** 20 - 10, ' ')]));
    const stream = Buffer.concat([Buffer.from('stream\n'), swelling, Buffer.from('\nendstream\n')]);
    const head = Buffer.from('%PDF-1.7\n');
    const endless = Buffer.alloc(2e5, 'stream\nx\u009c ', 'latin1');
    // They took 20 seconds, and minutes.
    const ms = await leastMs(() => {
      expect(factsInPdf(Buffer.concat([head, ...Array.from({ length: 300 }, () => stream)]))).toBe('no-data');
      expect(factsInPdf(Buffer.concat([head, endless, Buffer.alloc(2e8, ' ')]))).toBe('no-data');
    }, 8000);
    expect(ms).toBeLessThan(8000);
  });

  it('is any other heap of bytes', () => {
    const whole = readFileSync(pdf);
    let state = 11;
    const next = (most: number): number => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return state % most;
    };
    const answers = new Set<string>();
    for (let i = 0; i < 200; i++) {
      const bytes = Uint8Array.from(whole);
      for (let k = 0; k <= i % 60; k++) bytes[next(bytes.length)] = next(256);
      const found = factsInPdf(bytes);
      answers.add(typeof found === 'string' ? found : 'facts');
    }
    // Some damage the data and some don't; both are answers.
    expect([...answers].sort()).toEqual(expect.arrayContaining(['facts', 'no-data']));
  });

  it('has a house that is not there', async () => {
    const { status, error } = await verify(pdf, path.join(home, 'no-such-house'));
    expect(error).toContain('there is no folder');
    expect(error).toContain('sillplate verify');
    expect(status).toBe(2);
  });

  it('has a house whose record is at fault now', async () => {
    const later = path.join(home, 'faulty', 'test-lane');
    cpSync(folder, later, { recursive: true });
    writeFileSync(path.join(later, 'house.yaml'), YAML.replace('2001', '2001-13-40'));
    const { status, error } = await verify(pdf, later);
    expect(error).toContain('facts.date');
    expect(error).toContain('has errors and makes no packet now');
    expect(status).toBe(1);
  });
});
