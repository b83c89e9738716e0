/**
 * Draws the invented papers of the demo houses as one-page PDFs of a few kilobytes.
 * Takes a folder and a list of papers; writes one file each. Same list, same bytes: dates come from the paper.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { PDFDocument, rgb, StandardFonts } from 'pdf-lib';

const LETTER = { width: 612, margin: 64 };
/** A shop’s slip is narrow, and every paper with items ends where its last line does. */
const SLIP = { width: 440, margin: 32 };
const TOP = 792;
const BOTTOM = 60;
const INK = rgb(0.12, 0.12, 0.14);

/**
 * A paper: `head` in small type, `title`, then `lines`. A line is text, or `[left, right]` for a row with a
 * figure at its end; an empty text is a gap. `items` of a receipt are `[what, cents]`, or `[what, cents, 'untaxed']`
 * on a taxed one; tax is in thousandths. With items stands `total` in cents, `totalLabel` beside it, and `after`:
 * lines below it.
 *
 * Throws when a paper’s items and tax do not add up to its total, or when it does not fit its page.
 */
export async function writePapers(folder, papers) {
  await mkdir(folder, { recursive: true });
  for (const paper of papers) await writeFile(path.join(folder, paper.file), await drawPaper(paper));
}

/** Number of a paper as its maker prints it: `receipt-031` → `031`. */
export const paperNumber = (id) => id.replace(/^[a-z]+-/, '');

/** How one shop writes its receipts: a line of thanks, and the tax of its town in thousandths. */
export const receiptOf = (thanks, taxPerMille) => (id, date, head, items, total, more) => ({
  ...untaxed(id, date, head, items, total),
  lines: [thanks, ''],
  taxPerMille,
  ...more,
});

/** Invoices for work on one house. */
export const invoiceFor =
  (house) =>
  (id, date, head, items, total, { lines = [], ...more } = {}) => ({
    file: `${id}.pdf`,
    date,
    head,
    title: `Invoice no. ${paperNumber(id)}`,
    lines: [`For: ${house}`, '', ...lines],
    items,
    total,
    ...more,
  });

/** A receipt for what bears no sales tax: work, a fee, a tax. */
export const untaxed = (id, date, head, items, total, more = {}) => ({
  file: `${id}.pdf`,
  date,
  head,
  title: `Receipt no. ${paperNumber(id)}`,
  lines: ['Received with thanks.', ''],
  items,
  total,
  ...more,
});

/** A statement or account: what was charged or received, added up. */
export const statement = (id, date, head, items, total, more) => ({
  file: `${id}.pdf`,
  date,
  head,
  items,
  total,
  ...more,
});

async function drawPaper({ file, date, head, title, lines = [], items, after = [], ...sums }) {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const day = new Date(`${date}T12:00:00Z`);
  pdf.setCreationDate(day);
  pdf.setModificationDate(day);
  pdf.setTitle(title);
  pdf.setProducer('invented paper for a demo house');
  const plain = await pdf.embedFont(StandardFonts.Helvetica);
  const bold = await pdf.embedFont(StandardFonts.HelveticaBold);
  const { width, margin } = /^(receipt|credit)-/.test(file) ? SLIP : LETTER;
  const page = pdf.addPage([width, TOP]);
  let y = TOP - margin;
  const write = (text, size, font, drop) => {
    page.drawText(text, { x: margin, y, size, font, color: INK });
    y -= drop;
  };
  const row = (left, right, font = plain) => {
    const room = width - 2 * margin - font.widthOfTextAtSize(right, 11) - 8;
    if (font.widthOfTextAtSize(left, 11) > room) throw new Error(`${file}: “${left}” runs into ${right}`);
    page.drawText(left, { x: margin, y, size: 11, font, color: INK });
    const x = width - margin - font.widthOfTextAtSize(right, 11);
    page.drawText(right, { x, y, size: 11, font, color: INK });
    y -= 18;
  };
  const writeLines = (list) => {
    for (const line of list) {
      if (line === '') y -= 12;
      else if (Array.isArray(line)) row(line[0], line[1]);
      else write(line, 11, plain, 17);
    }
  };
  for (const line of head) write(line, 10, plain, 14);
  y -= 22;
  write(title, 17, bold, 20);
  write(date, 10, plain, 30);
  writeLines(lines);
  if (items !== undefined) writeTotal(file, row, items, sums);
  writeLines(after);
  if (y < BOTTOM) throw new Error(`${file}: more lines than the page holds`);
  page.drawText(`Invented for a demonstration. ${file}`, {
    x: margin,
    y: items === undefined ? 44 : y - 16,
    size: 8,
    font: plain,
    color: INK,
  });
  if (items !== undefined) page.setMediaBox(0, y - 40, width, TOP - (y - 40));
  return pdf.save();
}

function writeTotal(file, row, items, { total, taxPerMille = 0, totalLabel = 'Total' }) {
  const net = sumOf(items);
  const taxed = sumOf(items.filter(([, , taxing]) => taxing !== 'untaxed'));
  const tax = Math.sign(taxed) * Math.round((Math.abs(taxed) * taxPerMille) / 1000);
  if (net + tax !== total)
    throw new Error(`${file}: the lines add up to ${dollars(net + tax)}, the total says ${dollars(total)}`);
  for (const [what, cents, taxing] of items)
    row(taxing === 'untaxed' ? `${what} (no tax)` : what, dollars(cents));
  if (tax !== 0) row('Sales tax', dollars(tax));
  row(totalLabel, dollars(total));
}

const sumOf = (items) => items.reduce((sum, [, cents]) => sum + cents, 0);

function dollars(cents) {
  if (!Number.isSafeInteger(cents)) throw new Error(`not a whole number of cents: ${cents}`);
  const all = Math.abs(cents);
  const whole = String(Math.floor(all / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${cents < 0 ? '-' : ''}$${whole}.${String(all % 100).padStart(2, '0')}`;
}
