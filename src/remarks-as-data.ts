/** A checked draft of listing remarks, and a draft from the facts, as JSON; and the former as notes beside a file's lines. */
import {
  type CheckedDraft,
  type CheckedWord,
  countOf,
  isTooLong,
  needsMending,
  TO_MEND,
} from './check-draft.js';
import type { Diagnostic } from './diagnostics/diagnostic.js';
import { printFactPath } from './diagnostics/fact-path.js';
import { firstHidden, hiddenWords } from './hidden-signs.js';
import type { RemarksDraft } from './packet/remarks-draft/draft-remarks.js';
import { plainText } from './packet/rich.js';
import { tooLongWords } from './remarks-head.js';
import { OWN_CAUTION, wayOut } from './remarks-report.js';
import type { AdvertisingRule } from './tally/advertising.js';
import { sentenceOfRule } from './tally/remarks/rules.js';

/** Offsets count UTF-16 code units of `text`, which is the file's own but for a byte-order mark. */
export function remarksData(checked: CheckedDraft, house: string, asOf: string): object {
  const { draft, claims, words, length, limit, stop } = checked;
  return {
    house,
    asOf,
    file: draft.file ?? null,
    text: draft.text,
    length: length.characters,
    words: length.words,
    limit: limit ?? null,
    hidden: hiddenWords(draft.text) ?? null,
    endAt: stop?.to ?? null,
    toMend: needsMending(checked),
    counts: {
      backed: countOf(checked, 'backed'),
      contradicted: countOf(checked, 'contradicted'),
      wider: countOf(checked, 'wider'),
      'no-fact': countOf(checked, 'no-fact'),
      opinion: countOf(checked, 'opinion'),
    },
    claims: claims.map(({ from, to, says, verdict, rule, because, facts, instead }) => ({
      from,
      to,
      says,
      verdict,
      rule,
      ruleSays: sentenceOfRule(rule) ?? null,
      because,
      facts: facts.map(({ path, words, evidence, known, place }) => ({
        file: place?.file ?? null,
        line: place?.line ?? null,
        column: place?.column ?? null,
        path: printFactPath(path),
        words,
        known,
        evidence,
      })),
      instead: instead ?? null,
    })),
    wording: words.map(({ from, to, says, level, because, instead, rule }) => ({
      from,
      to,
      says,
      level,
      because,
      instead: instead ?? null,
      rule: ruleData(rule),
    })),
  };
}

const ruleData = ({ id, quoted, title, section, publisher, status }: AdvertisingRule): object => ({
  id,
  quoted,
  title,
  section,
  publisher,
  status,
});

export function draftData(draft: RemarksDraft, house: string, asOf: string, characters: number): object {
  return {
    house,
    asOf,
    text: draft.text,
    length: characters,
    phrases: draft.phrases.map(({ from, to, says, fact, mark, evidence, path }) => ({
      from,
      to,
      says,
      fact,
      path: printFactPath(path),
      known: mark.word,
      by: plainText(mark.detail),
      evidence,
    })),
    left: draft.left.map(({ says, fact, path }) => ({ says, fact, path: printFactPath(path) })),
  };
}

// ------------------------------------------------------------------ beside the lines of a file

/** One message for each thing to be mended or looked at, at its place in the draft. */
export function remarksNotes(checked: CheckedDraft): Diagnostic[] {
  const { draft, claims, words } = checked;
  const at = (from: number, to: number): Pick<Diagnostic, 'place'> => ({
    // What was typed has no lines that anybody could open.
    ...(draft.file === undefined ? {} : { place: draft.placeOf({ start: from, end: to }) }),
  });
  return [
    ...claims
      .filter(({ verdict }) => verdict !== 'backed' && verdict !== 'opinion')
      .map(
        (claim): Diagnostic => ({
          code: 'remarks.claims',
          severity: TO_MEND.includes(claim.verdict) ? 'warning' : 'note',
          ...at(claim.from, claim.to),
          message: `“${claim.says}”: ${[claim.because, ...claim.facts.slice(0, 1).map(({ words: said }) => said)].join('; ')}`,
          hints: [hintOf(claim)],
        }),
      ),
    ...words.map(
      (word): Diagnostic => ({
        code: 'remarks.wording',
        severity: word.level === 'block' ? 'warning' : 'note',
        ...at(word.from, word.to),
        message: wordMessage(word),
        hints: [hintOf(word)],
      }),
    ),
    ...hiddenNote(checked, at),
    ...(isTooLong(checked)
      ? [
          {
            code: 'remarks.length',
            severity: 'warning',
            ...at(checked.stop?.to ?? 0, (checked.stop?.to ?? 0) + 1),
            message: tooLongWords(checked),
            hints: ['shorten it'],
          } as const,
        ]
      : []),
  ];
}

/** Signs that nobody sees. */
function hiddenNote(
  { draft }: CheckedDraft,
  at: (from: number, to: number) => Pick<Diagnostic, 'place'>,
): Diagnostic[] {
  const words = hiddenWords(draft.text);
  if (words === undefined) return [];
  const first = firstHidden(draft.text) ?? 0;
  return [
    {
      code: 'remarks.wording',
      severity: 'note',
      ...at(first, first + 1),
      message: words,
      hints: ['type that line anew as plain text'],
    },
  ];
}

function hintOf(about: Parameters<typeof wayOut>[0]): string {
  const way = wayOut(about);
  if (way === undefined) return 'leave it as it is';
  return way.label === 'write' ? `write  ${way.words}` : way.words;
}

/** "“adults only”: … (F05, HUD memorandum)". The report has the title whole. */
export const wordMessage = ({ says, because, rule }: CheckedWord): string =>
  `“${says}”: ${because} (${ruleName(rule)})`;

export const ruleName = ({ id, title, status }: AdvertisingRule): string =>
  status === OWN_CAUTION ? 'this program’s own caution' : `${id}, ${title.split(/[,;]/)[0]}`;
