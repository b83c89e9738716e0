/**
 * Draws the invented papers of the demo houses as one-page PDFs of a few kilobytes.
 * Takes a folder and a list of papers; writes one file each. Same list, same bytes: dates come from the paper.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { PDFDocument, rgb, StandardFonts } from 'pdf-lib';

const LETTER = [612, 792];
const MARGIN = 64;
const INK = rgb(0.12, 0.12, 0.14);

/**
 * A paper: `head` in small type, `title`, then `lines`. A line is text, or `[left, right]` for a row with a
 * figure at its end; an empty text is a gap. `items` of a receipt are `[what, cents]`; tax is in thousandths.
 */
export async function writePapers(folder, papers) {
  await mkdir(folder, { recursive: true });
  for (const paper of papers) await writeFile(path.join(folder, paper.file), await drawPaper(paper));
}

async function drawPaper({ file, date, head, title, lines = [], items, taxPerMille = 0 }) {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  const day = new Date(`${date}T12:00:00Z`);
  pdf.setCreationDate(day);
  pdf.setModificationDate(day);
  pdf.setTitle(title);
  pdf.setProducer('invented paper for a demo house');
  const plain = await pdf.embedFont(StandardFonts.Helvetica);
  const bold = await pdf.embedFont(StandardFonts.HelveticaBold);
  const page = pdf.addPage(LETTER);
  let y = LETTER[1] - MARGIN;
  const write = (text, size, font, drop) => {
    page.drawText(text, { x: MARGIN, y, size, font, color: INK });
    y -= drop;
  };
  const row = (left, right, font = plain) => {
    page.drawText(left, { x: MARGIN, y, size: 11, font, color: INK });
    const x = LETTER[0] - MARGIN - font.widthOfTextAtSize(right, 11);
    page.drawText(right, { x, y, size: 11, font, color: INK });
    y -= 18;
  };
  for (const line of head) write(line, 10, plain, 14);
  y -= 22;
  write(title, 17, bold, 20);
  write(date, 10, plain, 30);
  for (const line of lines) {
    if (line === '') y -= 12;
    else if (Array.isArray(line)) row(line[0], line[1]);
    else write(line, 11, plain, 17);
  }
  if (items !== undefined) writeTotal(row, items, taxPerMille);
  page.drawText(`Invented for a demonstration. ${file}`, {
    x: MARGIN,
    y: 44,
    size: 8,
    font: plain,
    color: INK,
  });
  return pdf.save();
}

function writeTotal(row, items, taxPerMille) {
  const net = items.reduce((sum, [, cents]) => sum + cents, 0);
  const tax = Math.round((net * taxPerMille) / 1000);
  for (const [what, cents] of items) row(what, dollars(cents));
  if (tax > 0) row('Sales tax', dollars(tax));
  row('Total', dollars(net + tax));
}

function dollars(cents) {
  const whole = String(Math.floor(cents / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `$${whole}.${String(cents % 100).padStart(2, '0')}`;
}
