/** “None known” of lead paint, where another place of the folder tells of a test that found it. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { House } from '../../facts/house.js';
import { type ClashSources, clashOf } from './clash.js';

/** “None known.”, “no lead paint known”; whatever leaves something out says more than that. */
const NONE = /^\W*(none|nothing|no (known )?(lead|hazards?|tests? (found|showed)))\b/i;
const BUT = /\b(but|except|other than|apart from|besides|positive|elsewhere|only)\b/i;

/** A sentence that says that lead paint was found. */
const FOUND: readonly RegExp[] = [
  /\bpositive (for|of) lead\b/i,
  /\blead(-based)?( paint)? (was|were|has been|is) (found|confirmed|detected|present)\b/i,
  /\b(found|detected|confirmed) lead\b/i,
  /\b(has|have|had|with|is|are|of) (known |confirmed )lead(-based)? paint\b/i,
];
/** Not found, not yet, not sure, or lead in something else than paint. */
const OTHERWISE =
  /\b(no|not|none|never|nothing|neither|nor|without|if|whether|may|might|could|would|should|unless|until|perhaps|possibly|negative for|water|solder|pipes?|soil)\b|n[’']t\b|\?/i;
/** Questions that a bare “yes” answers with lead paint. */
const ASKS_LEAD =
  /^(is|are|was|were) there (any )?(known )?lead\b|^(has|have|was|were) (any )?lead (paint |-based paint )?(been )?(found|detected)|positive for lead/i;

export function leadKnown({ house }: ClashSources): Diagnostic[] {
  const said = house.lead?.known.value;
  if (said === undefined || !NONE.test(said) || BUT.test(said)) return [];
  return places(house).flatMap(([words, path]) => {
    const sentence = words.split(/(?<=[.;])\s/).find(tellsOfLead);
    return sentence === undefined ? [] : [clash(said, sentence, path)];
  });
}

const tellsOfLead = (sentence: string): boolean =>
  FOUND.some((pattern) => pattern.test(sentence)) && !OTHERWISE.test(sentence);

const clash = (said: string, found: string, path: FactPath): Diagnostic =>
  clashOf({
    severity: 'error',
    path: ['lead', 'known'],
    beside: path,
    message: `of lead paint this says “${said}”, and another place says “${found.replace(/[.;]\s*$/, '')}”`,
    hints: [
      'if lead was found, say here where and by what test, and name the report under  reports:',
      'if it was not, correct the other place',
    ],
  });

/** All that the owner says in sentences of what is there and what was done. */
function places(house: House): (readonly [string, FactPath])[] {
  const texts = (path: FactPath, thing: Readonly<Record<string, unknown>>, words: readonly string[]) =>
    words.flatMap((word): (readonly [string, FactPath])[] => {
      const text = thing[word];
      return typeof text === 'string' ? [[text, [...path, word]]] : [];
    });
  return [
    ...house.conditions.flatMap((one, at) => texts(['conditions', at], one, ['what', 'note'])),
    ...house.work.flatMap((one, at) => texts(['work', at], one, ['what', 'how', 'why', 'note'])),
    ...house.systems.flatMap((one, at) => texts(['systems', at], one, ['name', 'note'])),
    ...(['rooms', 'structures'] as const).flatMap((top) =>
      house[top].flatMap((home, at) => [
        ...texts([top, at], home, ['note']),
        ...home.finishes.flatMap((finish, index) =>
          texts([top, at, 'finishes', index], finish, ['what', 'note']),
        ),
      ]),
    ),
    ...house.documents.flatMap((one, at) => texts(['documents', at], one, ['what'])),
    ...Object.entries(house.photos).flatMap(([id, one]) => texts(['photos', id], one, ['shows'])),
    ...house.answers.flatMap(({ ask, answer }, at) =>
      answerWords(ask, answer.value, ['answers', at, 'answer']),
    ),
    ...house['private-notes'].map((note, at) => [note, ['private-notes', at]] as const),
  ];
}

/** A bare yes says what was asked. */
function answerWords(
  ask: string,
  answer: string | undefined,
  path: FactPath,
): (readonly [string, FactPath])[] {
  if (answer === undefined) return [];
  const yes = /^\W*yes\b/i.test(answer) && ASKS_LEAD.test(ask.trim());
  return [[yes ? `lead was found: ${answer}` : answer, path]];
}
