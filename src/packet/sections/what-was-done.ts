import { type Improvement, toldByThemselves } from '../../tally/improvements.js';
import { inTimeOrder } from '../../tally/photo-days.js';
import { type Context, photoAnchor, photoIn, placeName } from '../context.js';
import { donePlans } from '../done-plans.js';
import { evidenceOf, markOfSeveral } from '../marks.js';
import type { Block, Section } from '../packet.js';
import { pairAspect } from '../pair-crop.js';
import { photoCaption } from '../photo-words.js';
import { inWords, link, rich, strong, upperFirst } from '../rich.js';
import { datesSpan, subjectOf, tellImprovement, whoShort } from '../tell.js';

/** Every improvement, once, at its place. */
export function whatWasDone(context: Context): Section {
  const groups = groupByPlace(context);
  const blocks: Block[] = [];
  if (groups.length === 0) {
    blocks.push({ kind: 'paragraph', id: 'done-none', size: 'body', text: rich('No work is recorded.') });
  }
  const first = firstGroups(context, groups);
  const plans = donePlans(context, new Set(groups.map((group) => group.key)));
  const plansBefore = (key: string | undefined): Block[] =>
    plans.filter(({ level }) => first.get(level) === key).map(({ block }) => block);
  for (const group of groups) {
    blocks.push(...plansBefore(group.key));
    blocks.push({ kind: 'heading', id: `done-${group.key}`, level: 3, text: group.title });
    const surfaces = group.improvements.filter((one) => one.source.kind === 'finish');
    for (const improvement of group.improvements) {
      if (improvement.source.kind === 'finish') continue;
      const told = tellImprovement(
        context,
        improvement,
        group.key === 'several' ? 'with place' : 'without place',
      );
      blocks.push(
        { kind: 'statement', id: `done-${improvement.id}`, size: 'body', text: told.text, mark: told.mark },
        ...pairOf(context, improvement),
      );
    }
    blocks.push(...surfacesTold(context, group.key, surfaces), ...singlePhotos(context, group));
  }
  return { id: 'what-was-done', title: 'What was done', blocks: [...blocks, ...plansBefore(undefined)] };
}

/** Level → the first group that is about it or one of its rooms: the level's plan stands before that. */
function firstGroups({ house }: Context, groups: readonly PlaceGroup[]): ReadonlyMap<string, string> {
  const levelOf = new Map(house.rooms.map((room) => [room.id, room.level]));
  return new Map([...groups].reverse().map(({ key }) => [levelOf.get(key) ?? key, key]));
}

/** The finishes of one place rolled up, one statement for each who did them; what exactly stands in Rooms and finishes. */
function surfacesTold(context: Context, place: string, surfaces: readonly Improvement[]): Block[] {
  const byWhom = new Map<string, Improvement[]>();
  for (const one of surfaces) {
    const who = whoShort(context, one.who);
    byWhom.set(who, [...(byWhom.get(who) ?? []), one]);
  }
  return [...byWhom].map(([who, list], index): Block => {
    const deeds = new Map<string, string[]>();
    for (const one of list) deeds.set(one.did, [...(deeds.get(one.did) ?? []), subjectOf(one).toLowerCase()]);
    const head = [...deeds].map(([did, subjects]) => `${inWords([...new Set(subjects)])} ${did}`).join('; ');
    return {
      kind: 'statement',
      id: `done-surfaces-${place}-${index + 1}`,
      size: 'body',
      text: rich(
        strong(`${upperFirst(head)}.`),
        ` ${upperFirst(datesSpan(list))}, ${who}. `,
        link('Details', `room-${place}`),
        '.',
      ),
      mark: markOfSeveral(
        context,
        list.map((one) => evidenceOf(context, one.source.item)),
      ),
    };
  });
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
  for (const improvement of toldByThemselves(tally.improvements)) {
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

/** Before beside after, where both may be shown. */
function pairOf(context: Context, improvement: Improvement): Block[] {
  const { before, after } = photosOf(context, improvement);
  if (before === undefined || after === undefined) return [];
  return [
    {
      kind: 'pair',
      id: photoAnchor(context, after.id),
      before: before.id,
      after: after.id,
      aspect: pairAspect(before, after),
      caption: rich(
        `Before${photoCaption(before, 'date')} · after${photoCaption(after, 'date')}. ${upperFirst(after.shows)}.`,
      ),
    },
  ];
}

/** The photos of a place's work that have no partner, together. */
function singlePhotos(context: Context, group: PlaceGroup): Block[] {
  const photos = group.improvements.flatMap((improvement) => {
    const { before, after, during } = photosOf(context, improvement);
    return before !== undefined && after !== undefined
      ? during
      : [before, ...during, after].filter((photo) => photo !== undefined);
  });
  if (photos.length === 0) return [];
  return [
    {
      kind: 'photos',
      form: 'row',
      id: `done-${group.key}-photos`,
      photos: inTimeOrder(photos).map((photo) => ({
        id: photoAnchor(context, photo.id),
        photo: photo.id,
        caption: rich(photoCaption(photo, 'full')),
      })),
    },
  ];
}

function photosOf(context: Context, improvement: Improvement) {
  const photos = improvement.source.kind === 'work' ? improvement.source.item.photos : undefined;
  return {
    before: photoIn(context, photos?.before),
    after: photoIn(context, photos?.after),
    during: (photos?.during ?? []).map((id) => photoIn(context, id)).filter((photo) => photo !== undefined),
  };
}
