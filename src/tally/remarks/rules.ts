/** Every rule by which a claim is judged, with one plain sentence each: the report can print why. */
import { remarkClasses, remarkWords } from '../tables/remarks.js';

/** Rules by their id; those of a word, a group or a condition of the tables are made from the tables. */
const PLAIN: Readonly<Record<string, string>> = {
  aside: 'What is offered or imagined claims nothing of the house.',
  praise: 'Taste and praise are left alone.',
  there: 'A thing that is named should be told of by the folder.',
  'not-there': 'A thing that is denied should not be told of by the folder.',
  'not-told': 'A thing of which the folder tells nothing can’t be confirmed.',
  'other-kind': 'The folder tells of another thing in its place, or lists its like without it.',
  place: 'A thing should be where the folder has it.',
  permit: 'Permitted work has a permit that was closed.',
  'permit.taken': 'Who took a permit is who the folder says took it.',
  dues: 'Dues are those that the folder lists, for the same period.',
  lets: 'Letting is what an answer in the folder says of it.',
  'flood-zone': 'The folder does not know flood zones; the federal flood map does.',
  'all.alarms': 'Alarms in every room means that the folder lists one in each.',
  'all.levels': 'Heat or cooling on every level means that the folder has it on each.',
  'house.kind': 'Whether the house stands by itself is as the folder says.',
  'count.bedrooms': 'Bedrooms are the rooms that the folder uses as such.',
  'count.baths': 'Baths count by kind: a half bath is half, and is no full one.',
  'count.cars': 'Cars are those for which the folder says that the garage or carport is.',
  'count.storeys': 'Storeys are as the folder says.',
  'count.levels': 'A finished level has a finished room.',
  'count.compared': 'Of two counts the one called more should be more.',
  'count.living': 'Living areas are living, family and recreation rooms; an office or sunroom may count too.',
  'count.things': 'Things of which a house has few are counted in the folder.',
  'size.living-area': 'Living area is the measured one, within a hundredth; three behind “about”.',
  'size.lot': 'The lot is as the folder gives it, rounded as written.',
  'size.room': 'Sides of a room are within half a foot of the measured ones.',
  'size.ceiling': 'A ceiling is within two inches of a height that the folder gives.',
  'size.compared': 'Of two sizes the one called larger should be the larger.',
  'size.extent': 'Sides, depths and widths of a thing are those that the folder’s words give.',
  'size.feet': 'Feet of a thing are those that the folder’s words give.',
  'size.rating': 'Amps, gallons and tons are those of the label.',
  'date.built': 'The house was built in the year that the folder says.',
  'date.year': 'A year should be that of the deed, or of the thing.',
  'date.age': 'An age is counted to the day of the check, with a year of tolerance.',
  'date.within': 'A span back is counted from the day of the check.',
  'date.ago': 'A time ago is counted from the day of the check.',
  'date.same': 'Things of one age have dates within a year.',
  'date.order': 'What is newer than another thing has a later date than that.',
  'newness.new':
    'New is what was new within two years before the offer, and no second-hand, painted or repaired thing.',
  'newness.newer': 'Newer and recent mean within five years; up to ten they stretch.',
  'newness.young': 'A few years old means up to five.',
  'newness.recently': 'Recently means within five years.',
  'newness.replaced': 'Replaced is what was put in, and not what was repaired or refinished.',
  'newness.updated': 'Updated is that on which work was done within five years; up to ten it stretches.',
  'newness.remade':
    'Gutted and rebuilt is what was built anew; what was left, mended or only coated makes it too wide.',
  'newness.refaced': 'Refaced cabinets have new fronts on old boxes.',
  'newness.refinished': 'Refinished is what was sanded, coated or finished anew.',
  'newness.painted': 'Painted is what the folder says was painted.',
  'newness.repaired': 'Repaired is what was mended, and what the folder no longer lists as broken.',
  'newness.serviced': 'Serviced is what the folder says was serviced or cleaned.',
  'newness.original': 'Original is what stands since the house was built.',
  'newness.untouched': 'Untouched is what was left as found; service stretches that.',
  'newness.discarded': 'Thrown out is what is gone, and not what was kept or coated.',
  'newness.old': 'Old is what was left as found.',
  'who.licensed': 'Licensed is who stated a licence.',
  'who.professional': 'A professional is somebody hired, of the trade that is named.',
  'who.owner': 'By the owner means by the owner or family, and by nobody hired.',
  'who.amateur': 'A handyman is no hired person with a stated licence.',
  'who.named': 'Who is named should be the one that the folder names.',
  'who.measured': 'Who measured is who the folder says measured.',
  'owners.first': 'First owners bought the house when it was built.',
  'owners.since': 'The owners have had the house since the folder’s day of purchase.',
  'who.only': 'Who is said to have come for one thing only did nothing else that the folder tells of.',
  supply: 'A place has power, water or heat only where the folder does not say that it has none.',
  warranty: 'A warranty runs, and moves to the buyer, as the folder says.',
  answer: 'What an answer in the folder settles is as the answer says.',
  'conveys.stays': 'What stays is what the folder says stays.',
  'conveys.goes': 'What goes is what the folder says goes.',
  'conveys.open': 'What is settled in the folder is no longer to be agreed.',
  'condition.listed': 'What the folder lists as not mended, or as missing, is neither sound nor mended.',
  'condition.out-of-use':
    'What a note or an answer calls bypassed, closed off or disconnected does not work.',
};

/** The sentence of a rule; undefined where there is no such rule. */
export function sentenceOfRule(id: string): string | undefined {
  const plain = PLAIN[id];
  if (plain !== undefined) return plain;
  const [kind, name = ''] = [id.slice(0, id.indexOf('.')), id.slice(id.indexOf('.') + 1)];
  if (kind === 'kind' && remarkClasses().groups[name] !== undefined)
    return `What kind it is (${name.replaceAll('-', ' ')}) is as the folder says, and two kinds exclude each other.`;
  if (kind === 'condition' && remarkWords().conditions.some((one) => one.id === name))
    return 'Praise of a condition is held against what the folder lists as not mended and against its answers.';
  return undefined;
}

/** All ids that need no table, for the test that each has its sentence. @internal */
export const plainRules = (): readonly string[] => Object.keys(PLAIN);
