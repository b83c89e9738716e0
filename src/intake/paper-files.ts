/** The files of a house's documents: where they lie, how long they are, and what their bytes are known by. */
import { createHash } from 'node:crypto';
import path from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Document, House } from '../facts/house.js';
import type { PaperFile } from '../facts/ledger.js';
import { fewAtOnce } from './few-at-once.js';
import { openPlain } from './read-plain-file.js';
import { safePath } from './safe-path.js';

export interface PaperFiles {
  /** By the document's id. */
  readonly papers: ReadonlyMap<string, PaperFile>;
  /** Paths are those of the checked house: `['documents', 3, 'file']`. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Read at once: a disk serves a few files side by side, and each needs a buffer. */
const AT_ONCE = 4;

/** Files that are not there, or lie outside, are told of where documents are checked. */
export async function findPaperFiles(folder: string, house: House): Promise<PaperFiles> {
  const answers = await fewAtOnce(house.documents, AT_ONCE, async ({ file }) =>
    file === undefined ? undefined : readPaper(path.join(folder, 'documents'), file),
  );
  const found = answers.map((answer) => (answer && 'paper' in answer ? answer.paper : undefined));
  const diagnostics = answers.flatMap((answer, index): Diagnostic[] =>
    answer === undefined || 'paper' in answer || answer.trouble === undefined
      ? []
      : [
          {
            code: 'intake.no-file',
            severity: 'error',
            path: ['documents', index, 'file'],
            message: `documents/${house.documents[index]?.file} can’t be read (${answer.trouble})`,
            hints: ['check who may read it'],
          },
        ],
  );
  const papers = new Map<string, PaperFile>();
  for (const [index, { id }] of house.documents.entries()) {
    const paper = found[index];
    if (paper !== undefined && !papers.has(id)) papers.set(id, paper);
  }
  return { papers, diagnostics: [...diagnostics, ...twins(house.documents, found)] };
}

async function readPaper(
  folder: string,
  file: string,
): Promise<{ readonly paper: PaperFile } | { readonly trouble: string | undefined }> {
  const safe = await safePath(folder, file);
  if (!safe.ok) return { trouble: undefined };
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    for await (const chunk of (await openPlain(safe.absolute)).createReadStream()) {
      hash.update(chunk as Buffer);
      bytes += (chunk as Buffer).length;
    }
  } catch (thrown) {
    return { trouble: (thrown as NodeJS.ErrnoException).code ?? 'unknown reason' };
  }
  return { paper: { file, path: safe.absolute, bytes, sha256: hash.digest('hex') } };
}

const isBill = ({ kind }: Document): boolean => kind === 'receipt' || kind === 'invoice';

/** One receipt under two names may be counted twice. */
function twins(documents: readonly Document[], found: readonly (PaperFile | undefined)[]): Diagnostic[] {
  const first = new Map<string, number>();
  return documents.flatMap((document, index): Diagnostic[] => {
    const paper = found[index];
    if (paper === undefined) return [];
    const at = first.get(paper.sha256);
    if (at === undefined) {
      first.set(paper.sha256, index);
      return [];
    }
    const other = documents[at];
    const sameFile = found[at]?.path === paper.path;
    const bills = other !== undefined && isBill(other) && isBill(document);
    return [
      {
        code: 'intake.receipt-twice',
        severity: bills ? 'error' : 'warning',
        path: ['documents', index, 'file'],
        message: sameFile
          ? `“${document.id}” and “${other?.id}” are one file, documents/${paper.file}`
          : `“${document.id}” is the same paper as “${other?.id}”: their files are alike to the last byte`,
        hints: [
          bills
            ? `take ${document.id} out under documents:, and write ${other?.id} into its rows of the cost sheet`
            : 'keep one entry under documents:, and write its id wherever the other one’s stands',
        ],
      },
    ];
  });
}
