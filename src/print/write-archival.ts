/**
 * What makes a PDF fit to be kept: its metadata as XMP, and the colour space that its colours are meant in.
 *
 * PDF/A-3b (ISO 19005-3, 6.6 and 6.2.3) and PDF/UA-1 (ISO 14289-1, 5) ask for both; the identifiers of PDF/UA are no part
 * of PDF/A's own schemas, so they are described beside.
 */
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
