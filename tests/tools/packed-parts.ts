import yazl from 'yazl';

/** Texts by their names as a ZIP file, which is what a workbook is. */
export async function packedParts(parts: Readonly<Record<string, string>>): Promise<Buffer> {
  const zip = new yazl.ZipFile();
  for (const [name, xml] of Object.entries(parts)) zip.addBuffer(Buffer.from(xml), name);
  zip.end();
  const chunks: Buffer[] = [];
  for await (const chunk of zip.outputStream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
