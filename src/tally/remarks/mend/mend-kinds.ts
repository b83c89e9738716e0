/** Words in place of a wrong material, fuel or kind. */
import { remarkClasses } from '../../tables/remarks.js';
import type { Item } from '../items/items.js';
import { canBeSaidOf } from '../words/taxonomy.js';
import { has } from '../words/units.js';
import type { Stretch } from './stretch.js';

export function kindWords(stretch: Stretch, rule: string, items: readonly Item[], isWide: boolean): string[] {
  const group = rule.replace('kind.', '');
  const { says, units } = stretch;
  const wrong = units.filter(({ senses }) =>
    senses.some((sense) => sense.tag === 'class' && sense.group === group),
  );
  const [first] = wrong;
  const last = wrong.at(-1);
  if (first === undefined || last === undefined) return [];
  const [pre, post] = [says.slice(0, first.from), says.slice(last.to)];
  const named = units.some((unit) => !wrong.includes(unit) && has(unit, 'thing'));
  const plural =
    /(?:s|wood|tile|granite|stone)$/i.test(last.word) && !named && group === 'floor-covering'
      ? ' floors'
      : '';
  const adjective =
    /(?:ed|ing)$/i.test(last.word) && !/^(?:carpeting|flooring|tiling|unfinished|finished)$/i.test(last.word);
  const right = isWide ? [] : [...new Set(items.flatMap((item) => termsOf(item, group)))];
  return [
    ...(adjective && group === 'floor-covering' ? [] : right.slice(0, 3)).map(
      (term) => `${pre}${term}${post === '' ? plural : post}`,
    ),
    ...(group === 'finished-state' ? [`${pre}unfinished${post}`] : []),
    // Without the word that is wrong, where a thing stays.
    ...(named && post.trim() !== '' ? [`${pre}${post.trimStart()}`] : []),
  ];
}

/** The group's words for what the folder says that it is. */
function termsOf({ classes, things, what }: Item, group: string): string[] {
  const members = Object.entries(remarkClasses().groups)
    .filter(([name]) => name === group)
    .flatMap(([, of]) => Object.entries(of.members));
  const written = what.toLowerCase();
  const own = classes
    .filter((one) => one.group === group && things.some((id) => canBeSaidOf(group, id)))
    .flatMap(({ id }) => members.filter(([name]) => name === id))
    .flatMap(([, { words }]) => {
      // The folder's own word first, where the table has it.
      const said = words.filter((word) => written.includes(word));
      return [...said, ...words].slice(0, 1);
    });
  if (own.length > 0) return own;
  // "parking: detached garage" is read for the garage, though it is no fact of it.
  return members.flatMap(([, { words }]) =>
    words.filter((word) => word.length > 4 && written.startsWith(word)).slice(0, 1),
  );
}
