/** The papers of Larkspur Court: node tests/scenes/larkspur-court/papers.mjs */
import { fileURLToPath } from 'node:url';
import { writePapers } from '../paper.mjs';

const DESK = ['Dry Lake Wells permit desk', '10 Plaza Row, Dry Lake Wells, AZ 85999', '555-0140'];
const HARDWARE = ['Caliche Hardware', '3 Caliche Road, Dry Lake Wells, AZ 85999', '555-0141'];
const SUNDIAL = ['Sundial Paint and Tile', '77 Basin Street, Dry Lake Wells, AZ 85999', '555-0142'];
const FLOORS = ['Playa Floors', '81 Basin Street, Dry Lake Wells, AZ 85999', '555-0143'];
const HOUSE = '48 Larkspur Court, Dry Lake Wells';

const receipt = (number, date, head, items) => ({
  file: `receipt-${number}.pdf`,
  date,
  head,
  title: `Receipt no. ${number}`,
  lines: ['Paid in full.', ''],
  items,
  taxPerMille: 86,
});

const invoice = (number, date, head, items) => ({
  file: `invoice-${number}.pdf`,
  date,
  head,
  title: `Invoice no. ${number}`,
  lines: [`For: ${HOUSE}`, ''],
  items,
});

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
  invoice(
    '21',
    '2025-03-22',
    ['Switchback Electric', 'AZ-EL-000000', '555-0121'],
    [
      ['Recessed lights, 8', 112_000],
      ['Ground-fault receptacles, 11', 93_500],
      ['Alarms, 3, wired', 52_000],
      ['Bath fan with duct', 39_000],
      ['Pool light', 45_000],
    ],
  ),
  invoice(
    '24',
    '2025-04-28',
    ['Two Gulch Plumbing', 'AZ-PL-000000', '555-0122'],
    [
      ['Slab cut, line drain set', 164_000],
      ['Water lines to shower and basins', 114_000],
    ],
  ),
  invoice(
    '29',
    '2025-05-21',
    ['Mesquite Counters', '555-0127'],
    [
      ['Quartz, warm white, 52 sq ft, set', 382_000],
      ['Sink, two bowls', 30_000],
    ],
  ),
  invoice(
    '33',
    '2025-04-15',
    ['Ocotillo Pool Works', '555-0125'],
    [
      ['Steel fence, 60 in, 38 ft', 271_000],
      ['Gate with closer and latch', 93_000],
    ],
  ),
  receipt('30', '2025-02-21', HARDWARE, [
    ['Door closer', 3_450],
    ['Washer hoses, 2', 2_890],
    ['Dryer vent kit', 3_175],
  ]),
  receipt('35', '2025-03-27', SUNDIAL, [
    ['Wall paint, Chalk 02, 10 gal', 38_900],
    ['Wall paint, Fog 12 and Sky Wash 31, 5 gal', 19_450],
    ['Trim paint, Salt White, 2 gal', 9_180],
    ['Door paint, Agave 22, 1 qt', 2_650],
    ['Rollers and tape', 4_100],
  ]),
  receipt('41', '2025-04-08', FLOORS, [
    ['Plank, bleached walnut, 8 x 48, lots V-2231-C and -D, 38 boxes', 273_220],
    ['Adhesive, 4 pails', 38_400],
    ['Filler, 6 bags', 17_700],
  ]),
  receipt('47', '2025-05-02', SUNDIAL, [
    ['Cabinet fronts, made to list', 112_000],
    ['Wall tile, bone, 3 x 6, 40 sq ft', 15_130],
    ['Fireplace tile, slate, 7 x 14', 9_840],
    ['Kitchen faucet', 16_400],
    ['Disposal', 13_900],
    ['Dishwasher', 64_900],
  ]),
  receipt('52', '2025-04-19', SUNDIAL, [
    ['Wall tile, sandstone, 12 x 24', 48_600],
    ['Floor tile, dust grey, 18 x 18', 21_240],
    ['Sheet membrane', 31_800],
    ['Vanity, two basins', 124_000],
    ['Faucets, 2', 17_800],
    ['Toilet', 22_900],
    ['Line drain', 14_600],
  ]),
  receipt('55', '2025-05-27', FLOORS, [
    ['Plank, pale birch, 7 x 48, lot V-0907, 6 boxes', 47_940],
    ['Porcelain plank, honey brown, 8 x 48, lot PL-48-3, 20 boxes', 93_000],
    ['Mortar and grout', 16_850],
  ]),
]);
