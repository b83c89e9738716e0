/** Outlets: "grounded outlets throughout", "new outlets in the bedrooms", where the folder lists some of two prongs. */
import { sensesIn } from '../items/item-meaning.js';
import type { Known } from '../items/known.js';
import { itemsFor } from '../items/pick-items.js';
import { judgeCondition } from '../judge/judge-conditions.js';
import { thing } from '../words/taxonomy.js';
import { matches, type SetPhrase } from './set-phrases.js';

const OUTLETS = '(?:outlets?|receptacles?|plugs?)';

const GROUNDED = new RegExp(
  String.raw`\b(?:(?:fully|all|properly|new|modern) )*(?:grounded|three[- ]prong(?:ed)?|3[- ]prong(?:ed)?)(?: [a-z]+){0,2}? ${OUTLETS}\b|\b${OUTLETS} (?:(?:are|is|were|have been|been|all|now|both|fully|properly) ){1,4}(?:grounded|three[- ]prong(?:ed)?)\b`,
  'gi',
);

const NEW = new RegExp(
  String.raw`\b(?:(?:all|every|brand) )*(?:new|newer|updated|upgraded|modern|replaced) (?:electrical |wall )?${OUTLETS}\b|\b${OUTLETS} (?:(?:are|is|were|have been|been|all|now) ){1,4}(?:new|replaced|updated|upgraded|changed)\b`,
  'gi',
);

const DENIED = /\b(no|not|un|without|needs?|few|some|most)\b[^,;]{0,12}$/i;

export function outletsRead(known: Known, sentence: string): SetPhrase[] {
  if (!/outlet|receptacle|plug/i.test(sentence)) return [];
  const put = itemsFor(known, 'receptacle').some(({ kept, deed }) => !kept && deed !== undefined);
  return [...matches(GROUNDED, sentence), ...(put ? [] : matches(NEW, sentence))].flatMap((found) => {
    const to = found.index + found[0].length;
    if (DENIED.test(sentence.slice(0, found.index))) return [];
    const behind = sentence.slice(to, to + 40).replace(/[,;:.!?\n].*/s, '');
    const [, place = ''] = /^ (?:in|throughout) (?:the |all |both |every |each )*(.*)/i.exec(behind) ?? [];
    const rooms = sensesIn(place).flatMap((sense) =>
      sense.tag === 'thing' && thing(sense.id).room !== undefined ? [sense.id] : [],
    );
    const judgement = judgeCondition(known, 'grounded', [], rooms);
    return judgement.verdict === 'contradicted' ? [{ from: found.index, to, judgement }] : [];
  });
}
