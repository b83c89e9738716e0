/**
 * The same packet set with pdfkit, as one would write it: its own line breaking and tables, its own tagging and PDF/A
 * mode, the same faces and photos. The evidence of a statement follows it as a line of small type.
 *
 *   node tests/bench/paper-pdfkit.mjs JOB.json OUT.pdf [RUNS]
 *
 * JOB.json is `{ packet, photos: { id: file }, fonts: folder }`. With RUNS the packet is set once more, then as often as
 * RUNS says, and the milliseconds of those are printed as JSON.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
// @ts-expect-error pdfkit ships no types.
import PDFDocument from 'pdfkit';

/** @typedef {import('../../dist/packet/packet.js').Block} Block */
/** @typedef {import('../../dist/packet/packet.js').Packet} Packet */
/** @typedef {import('../../dist/packet/packet.js').Rich} Rich */
/** @typedef {import('../../dist/packet/packet.js').EvidenceMark} Mark */
/** @typedef {import('../../dist/packet/packet.js').Drawing} Drawing */
/** @typedef {{ packet: Packet, photos: Record<string, string>, fonts: string }} Job */

const MARGIN = 54;
const MEASURE = 612 - 2 * MARGIN;
const INKS = { ink: '#1d1d1b', soft: '#57564f', line: '#b9b6aa', accent: '#2f5d50' };
const FILLS = {
  paper: '#ffffff',
  wash: '#f1efe8',
  ink: '#1d1d1b',
  accent: '#2f5d50',
  'accent-soft': '#c9d8d2',
};
const PENS = { hair: 0.4, thin: 0.7, medium: 1.2, wall: 3, dashed: 0.7 };
const LETTERS = { name: 9.5, body: 8.5, small: 7.5, tick: 7, unknown: 7.5 };
const FACES = {
  text: 'SourceSerif4-Regular.ttf',
  strong: 'SourceSerif4-Semibold.ttf',
  emphasis: 'SourceSerif4-It.ttf',
  sans: 'SourceSans3-Regular.ttf',
  'sans-strong': 'SourceSans3-Semibold.ttf',
};

class Sheet {
  /** @param {Job} job */
  constructor({ packet, photos, fonts }) {
    this.packet = packet;
    this.photos = photos;
    this.alts = new Map(packet.photos.map(({ id, alt }) => [id, alt]));
    this.doc = new PDFDocument({
      size: 'LETTER',
      margin: MARGIN,
      pdfVersion: '1.7',
      subset: 'PDF/A-3b',
      tagged: true,
      lang: 'en-US',
      displayTitle: true,
      autoFirstPage: false,
      info: {
        Title: `${packet.house.name}, ${packet.edition.title}`,
        CreationDate: new Date(`${packet.asOf}T12:00:00Z`),
      },
    });
    for (const [name, file] of Object.entries(FACES)) this.doc.registerFont(name, path.join(fonts, file));
    this.root = this.doc.struct('Document');
    this.doc.addStructure(this.root);
    this.pages = 0;
    this.doc.on('pageAdded', () => this.foot());
  }

  foot() {
    const { doc, packet } = this;
    this.pages += 1;
    const words = `${packet.house.name} · ${packet.edition.title} · ${packet.digest} · page ${this.pages}`;
    // Setting a foot must not disturb the text that runs on over the page.
    const { x, y, _font, _fontSize } = doc;
    doc.markContent('Artifact', { type: 'Pagination' });
    doc
      .font('sans')
      .fontSize(7.5)
      .text(words, MARGIN, 792 - MARGIN / 2 - 8, { lineBreak: false });
    doc.endMarkedContent();
    doc._font = _font;
    doc._fontSize = _fontSize;
    doc.x = x;
    doc.y = y;
  }

  /** @returns {Promise<Buffer>} */
  async set() {
    const { doc, packet } = this;
    /** @type {Buffer[]} */
    const chunks = [];
    const ended = new Promise((resolve) => doc.on('end', () => resolve(undefined)));
    doc.on('data', (/** @type {Buffer} */ chunk) => chunks.push(chunk));
    doc.addPage();
    this.line('H1', packet.house.name, 'strong', 26);
    this.line('P', `${packet.edition.title}. ${packet.edition.reader}. ${packet.house.place}`, 'text', 10.5);
    for (const { label, value } of packet.keyFacts) this.line('P', `${label}: ${value}`, 'text', 10.5);
    for (const section of packet.sections) {
      doc.addPage();
      doc.outline.addItem(section.title);
      this.line('H2', section.title, 'strong', 20);
      for (const block of section.blocks) if (block.only !== 'web') this.block(block);
    }
    this.line('P', packet.standing, 'text', 9);
    this.root.end();
    doc.end();
    await ended;
    return Buffer.concat(chunks);
  }

  /**
   * One text in one element.
   * @param {string} type
   * @param {string} text
   * @param {string} face
   * @param {number} size
   */
  line(type, text, face, size) {
    if (text !== '') this.rich(type, [{ text }], face, size);
  }

  /**
   * @param {string} type
   * @param {Rich} runs
   * @param {string} face
   * @param {number} size
   * @param {{ add: (child: unknown) => void }} [parent]
   */
  rich(type, runs, face, size, parent = this.root) {
    const { doc } = this;
    const filled = runs.filter(({ text }) => text !== '');
    if (filled.length === 0) return;
    const room = type.startsWith('H') ? size * 4 : size * 1.5;
    if (doc.y + room > 792 - MARGIN) doc.addPage();
    parent.add(
      doc.struct(type, () => {
        doc.fontSize(size).fillColor(INKS.ink);
        for (const [index, run] of filled.entries()) {
          const bold = face === 'sans' ? 'sans-strong' : 'strong';
          doc.font(run.manner === 'strong' ? bold : run.manner === 'emphasis' ? 'emphasis' : face);
          const options = { continued: index < filled.length - 1, width: MEASURE };
          if (index === 0) doc.text(run.text, MARGIN, doc.y, options);
          else doc.text(run.text, options);
        }
      }),
    );
    doc.y += size * 0.45;
  }

  /** @param {Mark | undefined} mark */
  mark(mark) {
    if (mark !== undefined) this.rich('P', markRuns(mark), 'sans', 8);
  }

  /** @param {Block} block */
  block(block) {
    switch (block.kind) {
      case 'heading':
        return this.line(`H${block.level}`, block.text, 'strong', block.level === 3 ? 14 : 11.5);
      case 'statement':
        this.rich('P', block.text, 'text', block.size === 'lead' ? 13 : 10.5);
        return this.mark(block.mark);
      case 'paragraph':
        return this.rich('P', block.text, 'text', block.size === 'small' ? 9 : 10.5);
      case 'list':
        return this.list(block);
      case 'table':
        return this.table(block);
      case 'record':
        this.rich('P', block.title, 'strong', 10.5);
        for (const { label, value } of block.entries)
          this.rich('P', [{ text: `${label}: `, manner: 'strong' }, ...value], 'sans', 9);
        return this.mark(block.mark);
      case 'photo':
        return this.row([block.photo], 2, [block.caption]);
      case 'pair':
        this.row([block.before, block.after], 2, []);
        return this.rich('P', block.caption, 'sans', 9);
      case 'photos':
        return this.photoRows(block);
      case 'drawing':
        this.drawing(block.drawing, block.alt);
        return this.rich('P', block.caption, 'sans', 9);
      case 'notice':
        this.line('P', block.title, 'strong', 10.5);
        for (const text of block.paragraphs) this.rich('P', text, 'text', 10.5);
        return this.rich('P', block.source ?? [], 'sans', 8);
      case 'question':
        this.line('P', block.ask, 'strong', 10.5);
        this.rich('P', block.answer, 'text', 10.5);
        return this.mark(block.mark);
      case 'form':
        this.rich('P', block.text, 'text', 9);
        for (const { label } of block.fields) this.line('P', `${label} ${'_'.repeat(30)}`, 'sans', 9);
    }
  }

  /** @param {Extract<Block, { kind: 'list' }>} block */
  list({ items }) {
    const list = this.doc.struct('L');
    this.root.add(list);
    for (const { text, mark } of items) {
      const item = this.doc.struct('LI');
      list.add(item);
      const known = mark === undefined ? [] : [{ text: '  ' }, ...markRuns(mark)];
      this.rich('LBody', [...text, ...known], 'text', 10.5, item);
      item.end();
    }
    list.end();
  }

  /** @param {Extract<Block, { kind: 'table' }>} block */
  table({ caption, columns, rows, note }) {
    const { doc } = this;
    this.line('P', caption, 'strong', 10.5);
    const marked = rows.some(({ mark }) => mark !== undefined);
    const own = columns.map(({ weight }) => weight);
    const sumOf = (/** @type {number[]} */ list) => list.reduce((sum, weight) => sum + weight, 0);
    const weights = marked ? [...own, sumOf(own) * 0.3] : own;
    const all = sumOf(weights);
    const head = [...columns.map(({ title }) => title), ...(marked ? ['How it is known'] : [])];
    doc.font('sans').fontSize(8.5).fillColor(INKS.ink);
    if (doc.y + 60 > 792 - MARGIN) doc.addPage();
    doc.x = MARGIN;
    doc
      .table({
        structParent: this.root,
        columnStyles: weights.map((weight) => ({ width: (MEASURE * weight) / all })),
        defaultStyle: { border: [0, 0, 0.4, 0], padding: 3 },
      })
      .row(head.map((text) => ({ text, type: 'TH', font: { src: 'sans-strong', size: 8.5 } })));
    const table = doc.table({
      structParent: this.root,
      columnStyles: weights.map((weight) => ({ width: (MEASURE * weight) / all })),
      defaultStyle: { border: [0, 0, 0.4, 0], padding: 3 },
    });
    for (const { cells, mark } of rows)
      table.row([...cells.map(plain), ...(marked ? [mark === undefined ? '' : plain(markRuns(mark))] : [])]);
    table.end();
    doc.x = MARGIN;
    doc.y += 6;
    if (note !== undefined) this.rich('P', note, 'sans', 8);
  }

  /** @param {Extract<Block, { kind: 'photos' }>} block */
  photoRows({ form, photos }) {
    const across = form === 'contact' ? 5 : 3;
    for (let from = 0; from < photos.length; from += across) {
      const row = photos.slice(from, from + across);
      this.row(
        row.map(({ photo }) => photo),
        across,
        row.map(({ caption }) => caption),
      );
    }
  }

  /**
   * Photos side by side, each with its caption.
   * @param {readonly string[]} ids
   * @param {number} across
   * @param {readonly Rich[]} captions
   */
  row(ids, across, captions) {
    const { doc } = this;
    const width = (MEASURE - (across - 1) * 8) / across;
    const height = width * 0.75;
    if (doc.y + height + 30 > 792 - MARGIN) doc.addPage();
    const top = doc.y;
    let bottom = top + height;
    for (const [index, id] of ids.entries()) {
      const x = MARGIN + index * (width + 8);
      const file = this.photos[id];
      if (file === undefined) continue;
      this.root.add(
        doc.struct('Figure', { alt: this.alts.get(id), bbox: [x, top, x + width, top + height] }, () =>
          doc.image(file, x, top, { fit: [width, height] }),
        ),
      );
      const text = plain(captions[index] ?? []);
      if (text === '') continue;
      this.root.add(
        doc.struct('Caption', () => {
          doc.font('sans').fontSize(8).fillColor(INKS.ink);
          doc.text(text, x, top + height + 3, { width });
        }),
      );
      bottom = Math.max(bottom, doc.y);
    }
    doc.x = MARGIN;
    doc.y = bottom + 8;
  }

  /**
   * @param {Drawing} drawing
   * @param {string} alt
   */
  drawing(drawing, alt) {
    const { doc } = this;
    const scale = Math.min(1, MEASURE / drawing.width, (792 - 2 * MARGIN) / drawing.height);
    const [width, height] = [drawing.width * scale, drawing.height * scale];
    if (doc.y + height > 792 - MARGIN) doc.addPage();
    const top = doc.y;
    this.root.add(
      doc.struct('Figure', { alt, bbox: [MARGIN, top, MARGIN + width, top + height] }, () => {
        doc.save();
        doc.translate(MARGIN, top).scale(scale);
        for (const shape of drawing.shapes) this.shape(shape);
        doc.restore();
      }),
    );
    doc.x = MARGIN;
    doc.y = top + height + 6;
  }

  /** @param {Drawing['shapes'][number]} shape */
  shape(shape) {
    const { doc } = this;
    if (shape.kind === 'text') {
      const size = LETTERS[shape.style];
      doc.font('sans').fontSize(size).fillColor(INKS[shape.ink]);
      const wide = shape.anchor === 'start' ? 0 : doc.widthOfString(shape.text);
      const x = shape.at[0] - (shape.anchor === 'middle' ? wide / 2 : wide);
      doc.save();
      if (shape.turn !== undefined && shape.turn !== 0) doc.rotate(shape.turn, { origin: shape.at });
      doc.text(shape.text, x, shape.at[1], { lineBreak: false, baseline: 'alphabetic' });
      doc.restore();
      return;
    }
    if (shape.kind === 'line') doc.moveTo(...shape.from).lineTo(...shape.to);
    else if (shape.kind === 'circle') doc.circle(...shape.at, shape.radius);
    else {
      for (const [index, at] of shape.points.entries()) index === 0 ? doc.moveTo(...at) : doc.lineTo(...at);
      if (shape.closed) doc.closePath();
    }
    const pen =
      shape.kind === 'line' ? shape.pen : shape.ink === undefined ? undefined : (shape.pen ?? 'thin');
    if (pen !== undefined) {
      doc.lineWidth(PENS[pen]).strokeColor(INKS[shape.ink ?? 'ink']);
      if (pen === 'dashed') doc.dash(2);
      else doc.undash();
    }
    const fill = shape.kind === 'line' || shape.fill === 'none' ? undefined : FILLS[shape.fill];
    if (fill !== undefined && pen !== undefined) doc.fillAndStroke(fill, INKS[shape.ink ?? 'ink']);
    else if (fill !== undefined) doc.fill(fill);
    else doc.stroke();
  }
}

/** @param {Rich} runs */
const plain = (runs) => runs.map(({ text }) => text).join('');

/**
 * @param {Mark} mark
 * @returns {Rich}
 */
const markRuns = ({ word, detail }) => [
  { text: detail.length === 0 ? word : `${word} · `, manner: 'strong' },
  ...detail,
];

const [, , jobFile = '', out = '', runs = '0'] = process.argv;
/** @type {Job} */
const job = JSON.parse(readFileSync(jobFile, 'utf8'));
writeFileSync(out, await new Sheet(job).set());
if (Number(runs) > 0) {
  await new Sheet(job).set();
  const took = [];
  for (let run = 0; run < Number(runs); run += 1) {
    const started = performance.now();
    await new Sheet(job).set();
    took.push(performance.now() - started);
  }
  process.stdout.write(JSON.stringify(took));
}
