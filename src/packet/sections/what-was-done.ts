import type { Improvement } from '../../tally/improvements.js';
import { type Context, photoIn, placeName } from '../context.js';
import type { Block, Section } from '../packet.js';
import { photoCaption } from '../photo-words.js';
import { rich, say, upperFirst } from '../rich.js';
import { tellImprovement } from '../tell.js';

/** Every improvement, once, at its place. */
export function whatWasDone(context: Context): Section {
  const groups = groupByPlace(context);
  const blocks: Block[] = [];
  if (groups.length === 0) {
    blocks.push({ kind: 'paragraph', id: 'done-none', size: 'body', text: rich('No work is recorded.') });
  }
  for (const group of groups) {
    blocks.push({ kind: 'heading', id: `done-${group.key}`, level: 3, text: group.title });
    for (const improvement of group.improvements) {
      const told = tellImprovement(
        context,
        improvement,
        group.key === 'several' ? 'with place' : 'without place',
      );
      blocks.push(
        { kind: 'statement', id: `done-${improvement.id}`, size: 'body', text: told.text, mark: told.mark },
        ...photosOf(context, improvement),
      );
    }
  }
  return { id: 'what-was-done', title: 'What was done', blocks };
}

interface PlaceGroup {
  readonly key: string;
  readonly title: string;
  readonly improvements: Improvement[];
}

/** Whole house first, then places in the order the folder lists them; inside a place, what buyers ask first. */
function groupByPlace(context: Context): PlaceGroup[] {
  const { house, tally } = context;
  const order = [...house.levels, ...house.rooms, ...house.stairs, ...house.structures].map(
    (place) => place.id,
  );
  const groups = new Map<string, PlaceGroup>();
  for (const improvement of tally.improvements) {
    const [only, second] = improvement.where;
    const key = only === undefined ? 'house' : second === undefined ? only : 'several';
    const title =
      key === 'house'
        ? 'Whole house'
        : key === 'several'
          ? 'In several places'
          : upperFirst(placeName(context, key));
    const group = groups.get(key) ?? { key, title, improvements: [] };
    group.improvements.push(improvement);
    groups.set(key, group);
  }
  const rank = (key: string): number => (key === 'house' ? -2 : key === 'several' ? -1 : order.indexOf(key));
  return [...groups.values()].sort((a, b) => rank(a.key) - rank(b.key));
}

/** Before beside after where both may be shown; else whichever there is. */
export function photosOf(context: Context, improvement: Improvement): Block[] {
  if (improvement.source.kind !== 'work') return [];
  const { item } = improvement.source;
  const before = photoIn(context, item.photos?.before);
  const after = photoIn(context, item.photos?.after);
  const during = (item.photos?.during ?? [])
    .map((id) => photoIn(context, id))
    .filter((photo) => photo !== undefined);
  const blocks: Block[] = [];
  if (before !== undefined && after !== undefined) {
    blocks.push({
      kind: 'pair',
      id: `photo-${after.id}`,
      before: before.id,
      after: after.id,
      caption: rich(
        say(
          `Before${photoCaption(before, 'date')} · after${photoCaption(after, 'date')}. ${upperFirst(after.shows)}.`,
        ),
      ),
    });
  } else {
    for (const photo of [before, after])
      if (photo !== undefined)
        blocks.push({
          kind: 'photo',
          id: `photo-${photo.id}`,
          photo: photo.id,
          caption: rich(photoCaption(photo, 'full')),
        });
  }
  for (const photo of during)
    blocks.push({
      kind: 'photo',
      id: `photo-${photo.id}`,
      photo: photo.id,
      caption: rich(photoCaption(photo, 'full')),
    });
  return blocks;
}
