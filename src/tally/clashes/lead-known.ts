/** “None known” of lead paint, where another place of the folder tells of a test that found it. */
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { House } from '../../facts/house.js';
import { type ClashSources, clashOf } from './clash.js';
import { textsOf } from './texts-of.js';

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
  /^(?!.*\b(water|solder|pipes?|soil|flashing|glass)\b)(?:.*\bpositive for lead|(is|are|was|were) there (any )?(known )?lead\b|(has|have|was|were) (any )?lead(-based)?( paint)? (been )?(found|detected))/i;

export function leadKnown({ house }: ClashSources): Diagnostic[] {
  const said = house.lead?.known.value;
  if (said === undefined || !NONE.test(said) || BUT.test(said)) return [];
  return places(house).flatMap(([words, path, asked]) => {
    const sentence = words
      .split(/(?<=[.;])\s/)
      .find((one, at) => (tellsOfLead(one) || (asked !== undefined && at === 0)) && !OTHERWISE.test(one));
    return sentence === undefined ? [] : [clash(said, sentence, path, asked)];
  });
}

const tellsOfLead = (sentence: string): boolean => FOUND.some((pattern) => pattern.test(sentence));

const clash = (said: string, found: string, path: FactPath, asked: string | undefined): Diagnostic =>
  clashOf({
    severity: 'error',
    path: ['lead', 'known'],
    beside: path,
    message: `of lead paint this says “${said}”, and ${asked === undefined ? 'another place says' : `“${asked}” is answered with`} “${found.replace(/[.;]$/, '')}”`,
    hints: [
      'if lead was found, say here where and by what test, and name the report under  reports:',
      'if it was not, correct the other place',
    ],
  });

/** Words, where they stand, and the question that they answer with a bare yes. */
type Said = readonly [words: string, path: FactPath, asked?: string];

/** All that the owner says in sentences of what is there and what was done. */
function places(house: House): Said[] {
  return [
    ...house.conditions.flatMap((one, at) => textsOf(['conditions', at], one, ['what', 'note'])),
    ...house.work.flatMap((one, at) => textsOf(['work', at], one, ['what', 'how', 'why', 'note'])),
    ...house.systems.flatMap((one, at) => textsOf(['systems', at], one, ['name', 'note'])),
    ...(['rooms', 'structures'] as const).flatMap((top) =>
      house[top].flatMap((home, at) => [
        ...textsOf([top, at], home, ['note']),
        ...home.finishes.flatMap((finish, index) =>
          textsOf([top, at, 'finishes', index], finish, ['what', 'note']),
        ),
      ]),
    ),
    ...house.documents.flatMap((one, at) => textsOf(['documents', at], one, ['what'])),
    ...Object.entries(house.photos).flatMap(([id, one]) => textsOf(['photos', id], one, ['shows'])),
    ...house.answers.flatMap(({ ask, answer }, at) =>
      answerWords(ask, answer.value, ['answers', at, 'answer']),
    ),
    ...house['private-notes'].map((note, at) => [note, ['private-notes', at]] as const),
  ];
}

/** A bare yes says what was asked. */
function answerWords(ask: string, answer: string | undefined, path: FactPath): Said[] {
  if (answer === undefined) return [];
  return [/^\W*yes\b/i.test(answer) && ASKS_LEAD.test(ask.trim()) ? [answer, path, ask] : [answer, path]];
}
