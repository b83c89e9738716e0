/**
 * Which editions may hold what each word of a house folder says. A list of its own, beside the program's: a new word fails
 * the test until somebody writes here who may see it.
 */
import { EDITION_NAMES } from '../../src/build.js';
import type { EditionName } from '../../src/packet/packet.js';

type Words = Readonly<Record<string, string>>;

/** Any edition, as far as it tells of such things at all. */
const ANY: Words = {
  house: 'name kind storeys built lot construction foundation exterior water sewer parking bought listed',
  'house.address': 'street city state zip county show',
  'people[]': 'trade',
  measured: 'by date method estimated[] inside-seen from evidence[] note',
  record: 'area source date from evidence[] note',
  'levels[]': 'id name grade floor finish connected outline[] size measured ceiling from evidence[] note',
  'levels[].parts[]': 'what size ceiling floor',
  'levels[].walls': 'all north east south west',
  'levels[].openings[]': 'what size treads',
  'structures[]': 'id name is attached opens-into-house finished size outline[] from evidence[] note',
  'structures[].finishes[]':
    'on what did product colour code sheen base lot plank tile thickness joint grout sealed pattern direction over coats coverage area box waste left left-at done by permit work kept from evidence[] note',
  'rooms[]':
    'id name level use bath size outline[] at[] finish heated sleeping-area doors from evidence[] note',
  'rooms[].ceiling': 'at-7-ft at-5-ft highest flat lowest pitch sides length',
  'rooms[].low[]': 'what size clear',
  'rooms[].windows[]': 'name clear-width clear-height sill at-grade from evidence[] note',
  'rooms[].finishes[]':
    'on what did product colour code sheen base lot plank tile thickness joint grout sealed pattern direction over coats coverage area box waste left left-at done by permit work kept from evidence[] note',
  'systems[]':
    'id is name where made installed did by permit fuel capacity material serves serviced manual set-to mixing-valve anti-tip kept conveys from evidence[] note',
  'systems[].warranty': 'of until years moves-to-buyer terms',
  'systems[].warranty[]': 'of until years moves-to-buyer terms',
  'systems[].relief-pipe': 'diameter ends-above-floor threaded valve from evidence[] note',
  'alarms[]': 'id is where made replace-by power installed from evidence[] note',
  'stairs[]':
    'id name risers highest-riser lowest-riser tread width headroom handrail rail-height from evidence[] note',
  'guards[]': 'what drop guard height gap from evidence[] note',
  'pool.barriers[]':
    'what height gap-below widest-gap gate closes-itself opens-outward latch-height from evidence[] note',
  'work[]':
    'id what did how where[] systems[] why trade safety structural fixtures-moved paint-disturbed windows-replaced started done by permit from evidence[] note',
  'work[].photos': 'before during[] after',
  'work[].warranty': 'of until years moves-to-buyer terms',
  'conditions[]': 'what where since photos[] from evidence[] note',
  'permits[]': 'id number what office issued final state taken-by from evidence[] note',
  // Receipts, invoices and what is marked private are withheld whole: canaries of their own in canaries.ts.
  'documents[]': 'id what kind date',
  'photos{}': 'shows when where alt taken',
  'conveys[]': 'what stays note',
  'dues[]': 'to amount per covers since from evidence[] note',
  'answers[]': 'ask answer',
  'care[]': 'what for every next how',
  lead: 'known reports[] pamphlet-given firm',
};

/** Who was hired, but for their trade, by which sheets name them: not for the sheets that go to agents and strangers. */
const HIRED: Words = { 'people[]': 'id name licence' };

/** Who lives with the thing. */
const SERIALS: Words = { 'systems[]': 'model', 'systems[].label': 'serial reads' };

/** The sheet at the sign leads to the pages. */
const WEB: Words = { house: 'web' };

/** The owner alone. */
const OWNER: Words = {
  '': 'private-notes[]',
  house: 'parcel photos-within',
  'people[]': 'contact',
  'documents[]': 'total file kept private',
  'photos{}': 'file hide private not-before huge',
  duties:
    'units contract closing foreclosure studio condominium association district seaward-of-line sinkhole-claim-paid sewer-lateral-defect declared-disaster unincorporated subdivided pool for-resale',
  'duties.given[]': 'duty on evidence[] note',
  listing: 'service remarks-limit remarks',
  money: 'role in-business employees return-filed backup-withheld extensive-remodel hour-rate',
  'money.sale': 'closed price from evidence[] note',
  'money.gross-receipts[]': 'year amount',
  'money.land': 'price assessed-land assessed-building from evidence[] note',
  'money.rental': 'in-service from-home market-value-building market-value-land',
  'money.reductions[]': 'what amount year note',
  'money.property-tax[]': 'from amount paid-by reimbursed',
  'money.payees[]': 'name person sells tax-class attorney taxpayer-form relation',
  'money.budget[]': 'for amount',
  'money.held-up[]': 'from to waiting-for',
  'money.odometer[]': 'year vehicle start end read',
};

const DECIDED: readonly (readonly [Words, readonly EditionName[]])[] = [
  [ANY, EDITION_NAMES],
  [HIRED, ['buyer', 'care', 'file']],
  [SERIALS, ['care', 'file']],
  [WEB, ['visit', 'file']],
  [OWNER, ['file']],
];

/** By the word's path, as in `systems[].label.serial`. The long form of a fact (`….from`) goes with the fact. */
export const WHO_MAY_SEE: ReadonlyMap<string, readonly EditionName[]> = new Map(
  DECIDED.flatMap(([words, editions]) =>
    Object.entries(words).flatMap(([holder, list]) =>
      list.split(' ').map((word) => [holder === '' ? word : `${holder}.${word}`, editions] as const),
    ),
  ),
);

const LONG_FORM = /\.(?:from|evidence\[\]|note|was|corrected)$/;

/** The decision on a field: its own, or that of the fact whose long form it belongs to. */
export const mayBeSeen = (field: string): readonly EditionName[] | undefined =>
  WHO_MAY_SEE.get(field) ?? WHO_MAY_SEE.get(field.replace(LONG_FORM, ''));
