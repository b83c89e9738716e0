/** The papers of Larkspur Court: node tests/scenes/larkspur-court/papers.mjs */
import { fileURLToPath } from 'node:url';
import { invoiceFor, receiptOf, statement, untaxed, writePapers } from '../paper.mjs';

const DESK = ['Dry Lake Wells permit desk', '10 Plaza Row, Dry Lake Wells, AZ 85999', '555-0140'];
const HARDWARE = ['Caliche Hardware', '3 Caliche Road, Dry Lake Wells, AZ 85999', '555-0141'];
const SUNDIAL = ['Sundial Paint and Tile', '77 Basin Street, Dry Lake Wells, AZ 85999', '555-0142'];
const FLOORS = ['Playa Floors', '81 Basin Street, Dry Lake Wells, AZ 85999', '555-0143'];
const HOUSE = '48 Larkspur Court, Dry Lake Wells';
const SWITCHBACK = ['Switchback Electric', 'AZ-EL-000000', '555-0121'];
const TWO_GULCH = ['Two Gulch Plumbing', 'AZ-PL-000000', '555-0122'];
const ROOFING = ['Dry Wash Roofing', 'AZ-RF-000000', '555-0123'];
const SALTBUSH = ['Saltbush Air', '555-0124'];
const OCOTILLO = ['Ocotillo Pool Works', '555-0125'];
const GLASS = ['Basin Glass', '90 Basin Street, Dry Lake Wells, AZ 85999', '555-0126'];
const COUNTERS = ['Mesquite Counters', '555-0127'];
const TITLE = ['Basin Title', '20 Plaza Row, Dry Lake Wells, AZ 85999', '555-0146'];
const TREASURER = ['Sotol County treasurer', '1 Courthouse Square, Dry Lake Wells, AZ 85999', '555-0147'];
const BANK = ['Dry Lake Savings Bank', '24 Plaza Row, Dry Lake Wells, AZ 85999', '555-0148'];
const MUTUAL = ['Dry Country Mutual', '555-0149'];
const POWER = ['Sotol Power', '555-0150'];
const WATER = ['Town of Dry Lake Wells', '10 Plaza Row, Dry Lake Wells, AZ 85999', '555-0140'];
const ASSOC = ['Larkspur Court Owners’ Association', '555-0144'];
const POOLCARE = ['Still Basin Pool Care', '555-0151'];
const YARD = ['Arroyo Yard Care', '555-0152'];
const PICTURES = ['Clear Lens Pictures', '555-0153'];
const LISTING = ['Sotol Listing Desk', '555-0154'];
const HAULING = ['Gravel Pit Hauling', '2 Pit Road, Dry Lake Wells, AZ 85999', '555-0155'];
const CLEANING = ['Blue Bucket Cleaning', '555-0156'];
const HAULIER = ['Mesa Freight Mutual', '555-0157'];
const TILEHIRE = ['Plaza Tool Hire', '12 Caliche Road, Dry Lake Wells, AZ 85999', '555-0158'];

/** A shop’s receipt, taxed at 8.6 percent. */
const receipt = receiptOf('Paid in full.', 86);
const invoice = invoiceFor(HOUSE);

const permit = (file, date, number, work, rows) => ({
  file,
  date,
  head: DESK,
  title: `Permit ${number}`,
  lines: [['At', HOUSE], ['Work', work], ...rows],
});

await writePapers(fileURLToPath(new URL('../../../content/larkspur-court/documents', import.meta.url)), [
  {
    file: 'assessor-card.pdf',
    date: '2025-01-10',
    head: ['Sotol County assessor'],
    title: 'Record of the property',
    lines: [
      ['Parcel', '219-55-048'],
      ['Address', HOUSE],
      ['Built', '1991'],
      ['Living area', '1,858 sq ft (as of 2021)'],
      ['Foundation', 'concrete slab'],
      ['Garage', 'attached, two cars'],
      ['Pool', 'yes'],
      ['Additions', 'none on record'],
      ['Assessed, land', '$46,800'],
      ['Assessed, building', '$187,200'],
    ],
  },
  {
    file: 'plat.pdf',
    date: '1990-11-15',
    head: ['Sotol County recorder'],
    title: 'Plat of the Larkspur Court subdivision, lot 48',
    lines: [
      ['North line', '72.6 ft'],
      ['East line', '120.0 ft'],
      ['South line', '72.6 ft'],
      ['West line', '120.0 ft'],
      ['Area', '8,712 sq ft'],
    ],
  },
  {
    file: 'seller-form.pdf',
    date: '2024-12-19',
    head: ['Form of the seller'],
    title: 'Statement of the property',
    lines: [
      ['Sewer', 'septic'],
      ['Heat pump', 'about 2016'],
      ['Family room', 'added 2004'],
      ['Windows of the family room', '2003 to 2005'],
      ['Pool plaster', 'between 2012 and 2016'],
      ['Range', '2017 or 2018'],
      ['Washer and dryer', 'about 2020'],
      ['Garage door opener', '2018, I think'],
      ['Drip lines', 'in the 2010s'],
      ['Water softener', 'before 2015'],
    ],
  },
  {
    file: 'town-letter.pdf',
    date: '2025-02-18',
    head: DESK,
    title: 'Answer on the family room',
    lines: [
      `You asked for permits at ${HOUSE}.`,
      '',
      'No permit for an addition was found under this address.',
      'Files from before 2006 were lost in part when the desk moved.',
      'A pool file of 1994 exists; its final page is missing.',
    ],
  },
  {
    file: 'association-letter.pdf',
    date: '2025-01-22',
    head: ['Larkspur Court Owners’ Association', '555-0144'],
    title: 'Dues and rules',
    lines: [
      ['Dues, each month, from January 2025', '$64.00'],
      ['Change of owner, once', '$150.00'],
      'The dues cover lane lighting, the gate and common planting.',
      'Shortest stay of a tenant: thirty days.',
      'Roof tiles: colour as built.',
    ],
  },
  {
    file: 'termite-paper.pdf',
    date: '2019-05-08',
    head: ['Mesa Edge Pest Service', '555-0145'],
    title: 'Termite treatment',
    lines: [
      ['At', HOUSE],
      'Soil treated at the west wall and at the patio joint.',
      'Warranty: one year, ended May 2020.',
    ],
  },
  {
    file: 'measure-sheet.pdf',
    date: '2025-07-19',
    head: ['Measured by the owner with a steel tape'],
    title: 'Measuring sheet',
    lines: [
      'House, outside faces of the stucco, from the south-west corner:',
      `east 50' 0", north 34' 0", west 30' 0", north 8' 0", west 20' 0", south 42' 0"`,
      '',
      'Family room, inside:',
      `18' 6" x 15' 0", walls 6" on north, east and west`,
      '',
      ['Ceiling, house', `8' 0"`],
      ['Ceiling, living room', `8' 6"`],
      ['Ceiling, family room', `9' 0"`],
      ['Garage, outside', `20' 6" x 21' 0"`],
    ],
  },
  permit('permit-rf.pdf', '2025-03-18', 'RF-25-0034', 'roof underlayment, two slopes', [
    ['By', 'Dry Wash Roofing, AZ-RF-000000'],
    ['Issued', 'February 27, 2025'],
    ['Final', 'March 18, 2025'],
  ]),
  permit('permit-el.pdf', '2025-03-21', 'EL-25-0088', 'lights, receptacles, bath fan, pool light, alarms', [
    ['By', 'Switchback Electric, AZ-EL-000000'],
    ['Issued', 'March 4, 2025'],
    ['Final', 'March 21, 2025'],
  ]),
  permit('permit-pl.pdf', '2025-05-27', 'PL-25-0061', 'shower drain and water lines, primary bath', [
    ['By', 'Two Gulch Plumbing, AZ-PL-000000'],
    ['Issued', 'April 15, 2025'],
    ['Drain test', 'April 25, 2025'],
    ['Final', 'May 27, 2025'],
  ]),
  permit('permit-pb.pdf', '2025-04-01', 'PB-25-0019', 'pool fence and gate', [
    ['By', 'Ocotillo Pool Works'],
    ['Issued', 'April 1, 2025'],
    ['Seen', 'May 6, 2025: hang a sign at the gate'],
    ['Final', ''],
  ]),
  {
    file: 'roof-contract.pdf',
    date: '2025-03-14',
    head: ['Dry Wash Roofing', 'AZ-RF-000000', '555-0123'],
    title: 'Contract and warranty',
    lines: [
      ['At', HOUSE],
      'Tiles of the garage and the west slope lifted and laid back.',
      'Two layers of felt. Broken tiles changed: 22.',
      ['Price', '(struck out)'],
      '',
      'Warranty on the two slopes: ten years from March 14, 2025.',
      'Moves to the next owner by a letter within 30 days of closing.',
    ],
  },
  {
    file: 'paint-sheet.pdf',
    date: '2025-06-15',
    head: ['Paint record of the house'],
    title: 'Colours by room',
    lines: [
      ['Chalk 02 (C-02)', 'living, dining, kitchen, hall, family room'],
      ['Fog 12 (F-12)', 'primary bedroom and bath'],
      ['Sky Wash 31 (S-31)', 'bedroom 2, hall bath'],
      ['Lichen 17 (L-17)', 'kitchen fronts'],
      ['Agave 22 (A-22)', 'front door'],
      ['Salt White', 'trim, laundry'],
      ['Dune 05', 'stucco, patio ceiling'],
      ['not known', 'bedroom 3, dark blue'],
    ],
  },
  receipt(
    'receipt-30',
    '2025-02-21',
    HARDWARE,
    [
      ['Door closer', 3450],
      ['Washer hoses, 2', 2890],
      ['Dryer vent kit', 3175],
    ],
    10_333,
  ),
  receipt(
    'receipt-35',
    '2025-03-27',
    SUNDIAL,
    [
      ['Wall paint, Chalk 02, 10 gal', 38_900],
      ['Wall paint, Fog 12 and Sky Wash 31, 5 gal', 19_450],
      ['Trim paint, Salt White, 2 gal', 9180],
      ['Door paint, Agave 22, 1 qt', 2650],
      ['Rollers and tape', 4100],
    ],
    80_668,
  ),
  untaxed(
    'receipt-36',
    '2025-04-18',
    HAULING,
    [['Container, 6 yd, three days, with tipping', 38_500]],
    38_500,
    { title: 'Receipt no. 36' },
  ),
  receipt(
    'receipt-41',
    '2025-04-08',
    FLOORS,
    [
      ['Plank, bleached walnut, lots V-2231-C and -D, 38 boxes', 273_220],
      ['Adhesive, 4 pails', 38_400],
      ['Filler, 6 bags', 17_700],
    ],
    357_642,
  ),
  receipt(
    'receipt-43',
    '2025-04-21',
    TILEHIRE,
    [
      ['Wet saw, used, 10 in', 31_500],
      ['Spacers and wedges', 3400],
    ],
    37_901,
  ),
  receipt(
    'receipt-44',
    '2025-04-26',
    FLOORS,
    [
      ['Carpet, primary bedroom, walk-in, bedroom 3', 101_000],
      ['Pad', 24_000],
      ['Laying', 53_650, 'untaxed'],
    ],
    189_400,
  ),
  receipt(
    'receipt-47',
    '2025-05-02',
    SUNDIAL,
    [
      ['Cabinet fronts, made to list', 112_000],
      ['Wall tile, bone, 3 x 6, 40 sq ft', 15_130],
      ['Fireplace tile, slate, 7 x 14', 9840],
      ['Kitchen faucet', 16_400],
      ['Disposal', 13_900],
      ['Dishwasher', 64_900],
    ],
    252_137,
  ),
  receipt(
    'receipt-48',
    '2025-05-04',
    SUNDIAL,
    [
      ['Cabinet paint, Lichen 17, 2 gal', 13_900],
      ['Hinges, 44', 9680],
      ['Knobs, 30', 8700],
    ],
    35_056,
  ),
  receipt(
    'receipt-52',
    '2025-04-19',
    SUNDIAL,
    [
      ['Wall tile, sandstone, 12 x 24', 48_600],
      ['Floor tile, dust grey, 18 x 18', 21_240],
      ['Sheet membrane', 31_800],
      ['Vanity, two basins', 124_000],
      ['Faucets, 2', 17_800],
      ['Toilet', 22_900],
      ['Line drain', 14_600],
    ],
    305_101,
  ),
  receipt(
    'receipt-53',
    '2025-05-08',
    SUNDIAL,
    [
      ['Backer board, 12 sheets', 19_680],
      ['Mortar, 9 bags', 17_910],
      ['Grout, 4 bags', 9560],
    ],
    51_205,
  ),
  receipt(
    'receipt-55',
    '2025-05-27',
    FLOORS,
    [
      ['Plank, pale birch, 7 x 48, lot V-0907, 6 boxes', 47_940],
      ['Porcelain plank, honey brown, 8 x 48, lot PL-48-3, 20 boxes', 93_000],
      ['Mortar and grout', 16_850],
    ],
    171_360,
  ),
  receipt(
    'receipt-58',
    '2025-06-06',
    SUNDIAL,
    [
      ['Stucco filler, 2 tubs', 4796],
      ['Outside paint, Dune 05, 4 gal', 17_120],
      ['Ceiling fan', 9195],
      ['Paint return fee', 75, 'untaxed'],
    ],
    33_862,
  ),
  untaxed('receipt-65', '2025-08-01', LISTING, [['Listing, six months from August 1, 2025', 39_900]], 39_900),
  receipt(
    'receipt-66',
    '2025-06-12',
    HARDWARE,
    [
      ['Floor coating kit, sand fleck, 2', 15_800],
      ['Gravel, 30 bags', 7482],
      ['Door alarm', 3990],
    ],
    29_617,
  ),
  untaxed(
    'receipt-68',
    '2025-10-14',
    TREASURER,
    [['Parcel 219-55-048, tax of 2025, first half', 73_000]],
    73_000,
    { title: 'Tax receipt, first half' },
  ),
  untaxed('receipt-69', '2025-07-22', PICTURES, [['Photos, thirty, house and pool', 27_500]], 27_500),
  untaxed('receipt-73', '2026-02-02', LISTING, [['Listing, one year from February 1, 2026', 49_900]], 49_900),
  receipt(
    'receipt-74',
    '2026-02-17',
    HARDWARE,
    [
      ['Mailbox, steel', 8450],
      ['Post, 4 x 4, and two bags of concrete', 3900],
    ],
    13_412,
  ),
  untaxed(
    'receipt-76',
    '2026-03-10',
    TREASURER,
    [['Parcel 219-55-048, tax of 2025, second half', 73_000]],
    73_000,
    { title: 'Tax receipt, second half' },
  ),
  untaxed(
    'receipt-84',
    '2026-10-13',
    TREASURER,
    [['Parcel 219-55-048, tax of 2026, first half', 74_850]],
    74_850,
    { title: 'Tax receipt, first half' },
  ),
  invoice(
    'invoice-18',
    '2025-01-28',
    MUTUAL,
    [['Dwelling, vacant, one year from January 28, 2025', 74_200]],
    74_200,
    { title: 'Bill for a policy' },
  ),
  invoice(
    'invoice-20',
    '2025-03-18',
    ROOFING,
    [
      ['Tiles lifted and laid back, two slopes', 512_000],
      ['Felt, two layers, with flashing work', 318_000],
      ['Tiles changed, 22', 65_000],
    ],
    895_000,
    {
      after: [
        '',
        ['Deposit, received February 24, 2025', '$2,685.00'],
        ['Balance, received March 18, 2025', '$6,265.00'],
      ],
    },
  ),
  invoice(
    'invoice-21',
    '2025-03-22',
    SWITCHBACK,
    [
      ['Recessed lights, 8', 112_000],
      ['Ground-fault receptacles, 11', 93_500],
      ['Alarms, 3, wired', 52_000],
      ['Bath fan with duct', 39_000],
      ['Pool light', 45_000],
    ],
    341_500,
  ),
  invoice(
    'invoice-24',
    '2025-04-28',
    TWO_GULCH,
    [
      ['Slab cut, line drain set', 164_000],
      ['Water lines to shower and basins', 114_000],
    ],
    278_000,
  ),
  invoice(
    'invoice-26',
    '2025-05-06',
    SALTBUSH,
    [
      ['Coils washed, charge measured, float set', 19_500],
      ['Thermostat, set', 11_500],
    ],
    31_000,
  ),
  invoice(
    'invoice-29',
    '2025-05-21',
    COUNTERS,
    [
      ['Quartz, warm white, 52 sq ft, set', 382_000],
      ['Sink, two bowls', 30_000],
    ],
    412_000,
  ),
  invoice(
    'invoice-31',
    '2025-05-20',
    GLASS,
    [
      ['Shower panel, 3/8 in, set', 103_500],
      ['Clips and seal', 15_000],
    ],
    118_500,
  ),
  invoice(
    'invoice-33',
    '2025-04-15',
    OCOTILLO,
    [
      ['Steel fence, 60 in, 38 ft', 271_000],
      ['Gate with closer and latch', 93_000],
    ],
    364_000,
    {
      after: [
        '',
        ['Deposit, received April 1, 2025', '$1,000.00'],
        ['Balance, received April 15, 2025', '$2,640.00'],
      ],
    },
  ),
  invoice('invoice-34', '2025-07-21', CLEANING, [['Whole house and windows', 34_000]], 34_000),
  invoice(
    'invoice-35',
    '2025-12-30',
    POOLCARE,
    [
      ['Pool, weekly, July to September', 30_000],
      ['Pool, weekly, October to December', 30_000],
    ],
    60_000,
  ),
  invoice(
    'invoice-36',
    '2025-12-29',
    YARD,
    [
      ['Yard, twice a month, July to September', 18_000],
      ['Yard, twice a month, October to December', 18_000],
    ],
    36_000,
  ),
  invoice('invoice-37', '2026-02-26', CLEANING, [['Whole house', 26_000]], 26_000),
  invoice(
    'invoice-39',
    '2026-01-28',
    MUTUAL,
    [['Dwelling, let, one year from January 28, 2026', 106_400]],
    106_400,
    { title: 'Bill for a policy, renewed', after: ['', 'In four instalments of $266.00.'] },
  ),
  invoice(
    'invoice-40',
    '2026-09-30',
    POOLCARE,
    [
      ['Pool, weekly, January to March', 30_000],
      ['Pool, weekly, April to June', 30_000],
      ['Pool, weekly, July to September', 30_000],
    ],
    90_000,
  ),
  invoice('invoice-41', '2026-09-28', YARD, [['Yard, once a month, January to September', 27_000]], 27_000),
  {
    file: 'insurer-letter.pdf',
    date: '2026-03-24',
    head: HAULIER,
    title: 'Payment for a mailbox',
    lines: [
      ['Damage of', 'February 11, 2026'],
      ['At', '48 Larkspur Court'],
      ['Paid', '$120.00'],
    ],
  },
  {
    file: 'rebate-letter.pdf',
    date: '2025-07-08',
    head: POWER,
    title: 'Rebate for a thermostat',
    lines: [
      ['At', '48 Larkspur Court'],
      ['Taken off your account', '$50.00'],
    ],
  },
  statement(
    'association-account',
    '2026-10-01',
    ASSOC,
    [
      ['Dues, February to April 2025, received 2025-04-01', 19_200],
      ['Dues, May to July 2025, received 2025-07-01', 19_200],
      ['Dues, August to October 2025, received 2025-10-01', 19_200],
      ['Dues, November 2025 to January 2026, received 2026-01-02', 19_200],
      ['Dues, February to April 2026, received 2026-04-01', 19_200],
      ['Dues, May to July 2026, received 2026-07-01', 19_200],
      ['Dues, August to October 2026, received 2026-10-01', 19_200],
    ],
    134_400,
    { title: 'Account of lot 48', lines: ['Dues of $64.00 a month.', ''], totalLabel: 'Received' },
  ),
  statement(
    'closing-papers',
    '2025-01-15',
    TITLE,
    [
      ['Price of the house', 31_200_000],
      ['Title work, recording', 192_000],
      ['Loan fee, Dry Lake Savings Bank', 115_000],
      ['Interest, January 15 to 31', 62_333],
      ['Tax of 2025, seller’s 14 of 365 days, paid back', -5600],
    ],
    31_563_733,
    {
      title: 'Closing statement of the purchase',
      lines: ['48 Larkspur Court, parcel 219-55-048', ''],
      after: [
        ['Paid by Dry Lake Savings Bank', '$200,000.00'],
        ['Paid by wire', '$115,637.33'],
      ],
      totalLabel: 'Due from the buyer',
    },
  ),
  statement(
    'loan-statement-2025',
    '2025-12-31',
    BANK,
    [
      ['Interest, February and March, received 2025-03-31', 220_000],
      ['Interest, April to June, received 2025-06-30', 330_000],
      ['Interest, July to September, received 2025-09-30', 330_000],
      ['Interest, October to December, received 2025-12-31', 330_000],
    ],
    1_210_000,
    {
      title: 'Statement of the note of January 15, 2025: 2025',
      lines: ['Principal $200,000.00, 6.6 percent, months of 30 days, interest only', ''],
      totalLabel: 'Interest received',
    },
  ),
  statement(
    'loan-statement-2026',
    '2026-09-30',
    BANK,
    [
      ['Interest, January to March, received 2026-03-31', 330_000],
      ['Interest, April to June, received 2026-06-30', 330_000],
      ['Interest, July to September, received 2026-09-30', 330_000],
    ],
    990_000,
    {
      title: 'Statement of the note of January 15, 2025: 2026',
      lines: ['Principal $200,000.00, 6.6 percent, months of 30 days, interest only', ''],
      totalLabel: 'Interest received',
    },
  ),
  statement(
    'power-account',
    '2026-03-13',
    POWER,
    [
      ['January 15 to February, received 2025-03-14', 18_055],
      ['March and April, received 2025-05-14', 16_495],
      ['May and June, received 2025-06-30', 26_740],
      ['July and August, received 2025-09-15', 37_765],
      ['September and October, received 2025-11-14', 27_105],
      ['November and December, received 2026-01-14', 16_955],
      ['January and February, received 2026-03-13', 17_455],
    ],
    160_570,
    { title: 'Power and gas account, 48 Larkspur Court', totalLabel: 'Received' },
  ),
  statement(
    'water-account',
    '2026-09-30',
    WATER,
    [
      ['April to June 2025, received 2025-06-30', 12_440],
      ['July to September 2025, received 2025-09-30', 15_285],
      ['October to December 2025, received 2025-12-30', 10_165],
      ['January to March 2026, received 2026-03-31', 9840],
      ['April to June 2026, received 2026-06-30', 12_615],
      ['July to September 2026, received 2026-09-30', 15_410],
    ],
    75_755,
    { title: 'Water and sewer account, 48 Larkspur Court', totalLabel: 'Received' },
  ),
]);
