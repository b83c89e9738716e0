/** PDF files that ask for more than their size lets expect. */

/** One page whose drawing is `content`; `more` are objects from number 5 on, `resources` what the page may name. */
export function pdfOf(
  content: string,
  more: readonly string[] = [],
  resources = '',
  box = '0 0 612 792',
): Buffer {
  const objects = [
    '<</Type/Catalog/Pages 2 0 R>>',
    '<</Type/Pages/Kids[3 0 R]/Count 1>>',
    `<</Type/Page/Parent 2 0 R/MediaBox[${box}]/Contents 4 0 R/Resources<<${resources}>>>>`,
    `<</Length ${content.length}>>stream\n${content}\nendstream`,
    ...more,
  ];
  const parts: string[] = ['%PDF-1.4\n'];
  const starts: number[] = [];
  let at = 9;
  for (const [index, object] of objects.entries()) {
    const part = `${index + 1} 0 obj${object}endobj\n`;
    starts.push(at);
    parts.push(part);
    at += part.length;
  }
  const table = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  parts.push(
    `xref\n0 ${size}\n0000000000 65535 f \n${table}trailer<</Size ${size}/Root 1 0 R>>\nstartxref\n${at}\n%%EOF\n`,
  );
  return Buffer.from(parts.join(''), 'latin1');
}

const form = (content: string, resources: string): string =>
  `<</Type/XObject/Subtype/Form/BBox[0 0 612 792]/Resources<<${resources}>>/Length ${content.length}>>stream\n${content}\nendstream`;

/** Twelve forms, each of which draws the next one twenty times. */
export const formsInForms = (): Buffer =>
  pdfOf(
    '/F Do',
    [
      ...Array.from({ length: 12 }, (_, n) => form('/F Do '.repeat(20), `/XObject<</F ${6 + n} 0 R>>`)),
      form('0 0 m 600 700 l S', ''),
    ],
    '/XObject<</F 5 0 R>>',
  );

export const STROKE = '0 0 m 600 700 l S ';
