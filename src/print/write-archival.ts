/**
 * What makes a PDF fit to be kept: its metadata as XMP, the colour space that its colours are meant in, its data.
 *
 * PDF/A-3b (ISO 19005-3, 6.6 and 6.2.3) and PDF/UA-1 (ISO 14289-1, 5) ask for both; the identifiers of PDF/UA are no part
 * of PDF/A's own schemas, so they are described beside.
 */
import type { TextExport } from '../packet/packet.js';
import type { PdfStore, PdfValue, Ref } from './pdf-store.js';
import { SRGB_PROFILE } from './srgb-profile.js';

export interface DocumentWords {
  readonly title: string;
  readonly subject: string;
  readonly creator: string;
  readonly language: string;
  /** YYYY-MM-DD; its beginning in UTC stands for the moment the file was made. */
  readonly day: string;
}

/** The metadata stream, readable as it stands. */
export function writeMetadata(store: PdfStore, words: DocumentWords): Ref {
  const bytes = new TextEncoder().encode(xmpOf(words));
  return store.rawStream(bytes, { Type: 'Metadata', Subtype: 'XML' });
}

/** The catalog's `OutputIntents`. */
export function outputIntents(store: PdfStore): PdfValue {
  const intent = {
    Type: 'OutputIntent',
    S: 'GTS_PDFA1',
    OutputConditionIdentifier: store.ascii('sRGB'),
    Info: store.ascii('sRGB IEC61966-2.1'),
    DestOutputProfile: store.stream(SRGB_PROFILE, { N: 3 }),
  };
  return [intent];
}

export interface Attachments {
  /** For the catalog's name tree of embedded files, sorted as one must be. */
  readonly names: PdfValue;
  /** For the catalog's `AF`. */
  readonly files: readonly Ref[];
}

/**
 * The edition's own data inside its paper (ISO 19005-3, 6.8): the files that lie beside the pages, each with what it is
 * and how it relates. Undefined if the edition has none.
 */
export function attach(
  store: PdfStore,
  exports: readonly TextExport[],
  day: string,
): Attachments | undefined {
  if (exports.length === 0) return undefined;
  const sorted = [...exports].sort((a, b) => (a.file < b.file ? -1 : 1));
  const files = sorted.map(({ file, title, mediaType, text }) => {
    const bytes = new TextEncoder().encode(text);
    const embedded = store.stream(bytes, {
      Type: 'EmbeddedFile',
      Subtype: mediaType,
      Params: { Size: bytes.length, ModDate: store.ascii(pdfDate(day)) },
    });
    return store.add({
      Type: 'Filespec',
      F: store.ascii(file),
      UF: store.words(file),
      Desc: store.words(title),
      AFRelationship: 'Data',
      EF: { F: embedded, UF: embedded },
    });
  });
  const names = sorted.flatMap(({ file }, i): PdfValue[] => [store.ascii(file), files[i] ?? '']);
  return { names: { Names: names }, files };
}

/** The start of a day in UTC, as PDF writes dates. No clock is asked. */
export const pdfDate = (day: string): string => `D:${day.replaceAll('-', '')}000000Z`;

function xmpOf({ title, subject, creator, language, day }: DocumentWords): string {
  const moment = `${day}T00:00:00Z`;
  const property = (name: string, type: string, about: string): string =>
    `<rdf:li rdf:parseType="Resource"><pdfaProperty:name>${name}</pdfaProperty:name><pdfaProperty:valueType>${type}</pdfaProperty:valueType><pdfaProperty:category>internal</pdfaProperty:category><pdfaProperty:description>${about}</pdfaProperty:description></rdf:li>`;
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">${escaped(subject)}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>${language}</rdf:li></rdf:Bag></dc:language>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<xmp:CreatorTool>${escaped(creator)}</xmp:CreatorTool>
<xmp:CreateDate>${moment}</xmp:CreateDate>
<xmp:ModifyDate>${moment}</xmp:ModifyDate>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
<pdfaid:part>3</pdfaid:part>
<pdfaid:conformance>B</pdfaid:conformance>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq>${property('part', 'Integer', 'Part of ISO 14289')}</rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`;
}

/** A text inside an element. What XML 1.0 (2.2) has no place for is left out. */
function escaped(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is to go.
      .replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/gu, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
  );
}
