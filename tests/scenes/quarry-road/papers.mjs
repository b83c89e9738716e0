/** The papers of Quarry Road: node tests/scenes/quarry-road/papers.mjs */
import { fileURLToPath } from 'node:url';
import { invoiceFor, receiptOf, statement, untaxed, writePapers } from '../paper.mjs';

const OFFICE = ['Fallow Mills building office', '1 Market Square, Fallow Mills, OH 44999', '555-0130'];
const TOLLGATE = ['Tollgate Building Supply', '9 Tollgate Lane, Fallow Mills, OH 44999', '555-0131'];
const LUMBER = ['Mill Bend Lumber', '40 Mill Bend, Fallow Mills, OH 44999', '555-0132'];
const HIRE = ['Fallow Tool Hire', '17 Depot Street, Fallow Mills, OH 44999', '555-0133'];
const PLUMBING = ['Ridge Street Plumbing', 'OH-PL-00000', '555-0101'];
const ELECTRIC = ['Ridge Street Electric', 'OH-EL-00000', '555-0102'];
const MILL_RACE = ['Mill Race Renovation', 'NAT-F-000000-0', '555-0103'];
const TITLE = ['Fallow Title Agency', '6 Market Square, Fallow Mills, OH 44999', '555-0136'];
const TREASURER = ['Fallow County treasurer', '2 Market Square, Fallow Mills, OH 44999', '555-0137'];
const BANK = ['Fallow Savings Bank', '14 Market Square, Fallow Mills, OH 44999', '555-0138'];
const MUTUAL = ['Mill Bend Mutual', '22 Depot Street, Fallow Mills, OH 44999', '555-0139'];
const TESTING = ['Fallow Paint Testing', '555-0135'];
const SURVEY = ['Tallow Creek Surveying', '555-0134'];
const CHIMNEY = ['Old Hearth Chimney Service', '555-0105'];
const HEATING = ['Cinder Hill Heating', '555-0104'];
const GLAZING = ['Hollow Lane Tub Glazing', '555-0107'];
const COUNTERS = ['Stonefield Counters', '555-0106'];
const HAULING = ['Kettle Run Hauling', '5 Kettle Run, Fallow Mills, OH 44999', '555-0108'];
const APPLIANCES = ['Corner House Appliances', '30 Depot Street, Fallow Mills, OH 44999', '555-0109'];
const SECOND = ['Second Turn Appliances', '33 Depot Street, Fallow Mills, OH 44999', '555-0110'];
const STAGING = ['Bright Room Staging', '555-0111'];
const PICTURES = ['Long View Pictures', '555-0112'];
const BROOM = ['Plain Broom Cleaning', '555-0113'];
const MOWING = ['Weir Lane Mowing', '555-0114'];
const FUND = ['Fallow Power Fund', '555-0118'];
const TOWN = ['Town of Fallow Mills', '1 Market Square, Fallow Mills, OH 44999', '555-0130'];
const CAMERA = ['Lantern Hill Line', '555-0119'];
const HOUSE = '212 Tannery Lane, Fallow Mills';

/** A shop’s receipt, taxed at 7.5 percent. */
const receipt = receiptOf('Sold at the counter.', 75);
const invoice = invoiceFor(HOUSE);

await writePapers(fileURLToPath(new URL('../../../content/quarry-road/documents', import.meta.url)), [
  {
    file: 'county-card.pdf',
    date: '2026-02-17',
    head: ['Fallow County, office of property records'],
    title: 'Property card',
    lines: [
      ['Parcel', '31-0418-077'],
      ['Built', '1948'],
      ['Dwelling', 'detached, one and a half storeys'],
      ['Foundation', 'full cellar, block'],
      ['Exterior', 'vinyl siding'],
      ['Living area', '1,410 sq ft (as of 2019)'],
      ['Lot', '0.25 acre'],
      ['Assessed, land', '$19,600'],
      ['Assessed, building', '$78,400'],
      ['Tax of 2026', '$3,201.00'],
      '',
      'Areas are kept for assessment and are not warranted.',
    ],
  },
  {
    file: 'plat-2.pdf',
    date: '2026-04-28',
    head: ['Tallow Creek Surveying', '555-0134'],
    title: 'Plat of lot 2',
    lines: [
      ['North line', '66.0 ft'],
      ['East line', '138.6 ft'],
      ['South line', '66.0 ft'],
      ['West line', '138.6 ft'],
      ['Area', '9,148 sq ft, 0.21 acre'],
      '',
      'Iron pins found and marked at the two north corners.',
      'The south pins were not found.',
    ],
  },
  {
    file: 'seller-form.pdf',
    date: '2026-01-30',
    head: ['Form of the seller'],
    title: 'What the seller says of the property',
    lines: [
      ['Roof of the house', 'about 2016'],
      ['Roof of the garage', 'about 2005'],
      ['Gutters', 'with the roof'],
      ['Windows', 'between 2003 and 2005'],
      ['Washer and dryer', '2014 to 2016'],
      ['Water in the cellar', 'not known'],
      ['Half bath upstairs', 'was there before me'],
      ['Lead paint', 'none known'],
    ],
  },
  {
    file: 'office-letter.pdf',
    date: '2026-03-11',
    head: OFFICE,
    title: 'Answer on old permits',
    lines: [
      'You asked for permits at parcel 31-0418-077 before 2026.',
      '',
      'Found: RF-19-0377, roof, closed June 14, 2019.',
      'Not found: a permit for a half bath in the upper storey.',
      'Not found: a permit for the garage. Our books begin in 1955.',
    ],
  },
  {
    file: 'measure-sketch.pdf',
    date: '2026-06-14',
    head: ['Measured by the owner with a steel tape and a plumb line'],
    title: 'Measuring sketch',
    lines: [
      'Main level, outside faces, from the south-west corner:',
      `east 34' 0", north 30' 6", west 22' 0", south 4' 0", west 12' 0", south 26' 6"`,
      '',
      'Half storey, inside, gable to gable and knee wall to knee wall:',
      `33' 0" x 16' 0", gable walls 6"`,
      '',
      'Bedroom 3 along the floor:',
      [`at 7 ft or higher`, `13' 9" x 10' 0"`],
      [`at 5 ft or higher`, `13' 9" x 14' 0"`],
      '',
      'Cellar: as the main level. Joists at 7 ft 1 in, duct at 6 ft 4 in.',
      'Not taped: 8 ft of the north wall behind the lilac.',
    ],
  },
  {
    file: 'permit-pl.pdf',
    date: '2026-04-16',
    head: OFFICE,
    title: 'Plumbing permit PL-26-0182',
    lines: [
      ['Work', 'water heater; water lines of kitchen and bath'],
      ['By', 'Ridge Street Plumbing, OH-PL-00000'],
      ['Issued', 'April 2, 2026'],
      ['Water heater set', 'April 9, 2026'],
      ['Final', 'April 16, 2026'],
    ],
  },
  {
    file: 'permit-el.pdf',
    date: '2026-05-19',
    head: OFFICE,
    title: 'Electrical permit EL-26-0214',
    lines: [
      ['Work', 'three kitchen circuits; bath fan'],
      ['By', 'Ridge Street Electric, OH-EL-00000'],
      ['Issued', 'April 20, 2026'],
      ['Rough', 'April 27, 2026'],
      ['Final', 'May 19, 2026'],
    ],
  },
  {
    file: 'permit-bp.pdf',
    date: '2026-05-11',
    head: OFFICE,
    title: 'Building permit BP-26-0101',
    lines: [
      ['Work', 'front steps, rail, porch guard'],
      ['By', 'Mill Race Renovation'],
      ['Issued', 'May 11, 2026'],
      ['Footing seen', 'May 15, 2026'],
      ['Final', ''],
    ],
  },
  {
    file: 'permit-rf.pdf',
    date: '2019-06-14',
    head: OFFICE,
    title: 'Roof permit RF-19-0377 (copy)',
    lines: [
      ['Work', 'one layer off; laminated shingles on the house'],
      ['Issued', 'May 28, 2019'],
      ['Final', 'June 14, 2019'],
    ],
  },
  {
    file: 'lead-report.pdf',
    date: '2026-03-06',
    head: ['Fallow Paint Testing', '555-0135'],
    title: 'Lead test report',
    lines: [
      'Eighteen painted places were tested with a chemical kit, three chips',
      'were sent to a laboratory.',
      '',
      ['Living room window casings', 'positive'],
      ['Front steps and their risers', 'positive'],
      ['Cellar windows, outside', 'positive'],
      ['Kitchen cabinets and trim', 'negative'],
      ['Bath wall over the tub', 'negative'],
      ['Stair to the half storey', 'negative'],
      '',
      'Places that are not named were not tested.',
    ],
  },
  {
    file: 'lead-records.pdf',
    date: '2026-05-23',
    head: ['Mill Race Renovation', 'NAT-F-000000-0', '555-0103'],
    title: 'Records of the lead work',
    lines: [
      'Each job: plastic put down, wet work, waste bagged, cleaning cloth',
      'compared with the card.',
      '',
      ['March 19, 2026', 'living room casings, 14 sq ft'],
      ['April 22, 2026', 'bath wall board, 12 sq ft'],
      ['May 8, 2026', 'kitchen fronts, 5 sq ft'],
      ['May 23, 2026', 'front steps, 18 sq ft'],
      '',
      'The pamphlet was given to the owner on March 16, 2026.',
    ],
  },
  {
    file: 'chimney-report.pdf',
    date: '2026-03-24',
    head: ['Old Hearth Chimney Service', '555-0105'],
    title: 'Chimney report',
    lines: [
      'Two flues, swept, looked into with a camera.',
      'Furnace flue: liner whole as far as seen.',
      'Second flue, not in use: cracked at two joints. Closed off at the cellar.',
      'Crown: hairline cracks, sealed.',
    ],
  },
  {
    file: 'furnace-report.pdf',
    date: '2026-05-02',
    head: ['Cinder Hill Heating', '555-0104'],
    title: 'Furnace service sheet',
    lines: [
      'Burners brushed, flame sensor cleaned, filter changed.',
      ['Draught', '0.04 in of water'],
      ['Carbon monoxide in the flue', '38 ppm'],
      ['Carbon monoxide in the room', '0 ppm'],
      'Heat exchanger: looked at where it can be seen.',
      'Sticker inside the door: first start, November 2009.',
    ],
  },
  {
    file: 'wh-warranty.pdf',
    date: '2026-04-09',
    head: ['Warranty card'],
    title: 'Water heater, electric, 50 gallons',
    lines: [
      ['Tank', 'until April 2032'],
      ['Parts', 'one year'],
      'Needs registration within 60 days.',
      'Registered April 15, 2026.',
    ],
  },
  {
    file: 'paint-card.pdf',
    date: '2026-05-30',
    head: ['Paint record of the house'],
    title: 'Colours by room',
    lines: [
      ['Barley 08 (B-08)', 'living room, entry, hall, stair, bedroom 1'],
      ['Oat 12 (T-12)', 'kitchen, dining room, half bath'],
      ['Pond Mist 19 (M-19)', 'bath'],
      ['Reed 14 (R-14)', 'bedroom 3'],
      ['Sage 31 (S-31)', 'kitchen lower fronts, wainscot'],
      ['Linen White (L-04)', 'trim, kitchen upper fronts'],
      ['Rain Blue 45 (R-45)', 'garage siding'],
      ['Rust 27 (U-27)', 'front door'],
      ['match card M-2', 'bedroom 2, as found'],
    ],
  },
  receipt(
    'credit-031',
    '2026-04-20',
    TOLLGATE,
    [['Vinyl plank, ash, 1 box, unopened, from receipt 031', -5490]],
    -5902,
    { title: 'Credit slip, receipt no. 031', lines: ['Taken back at the counter.', ''] },
  ),
  untaxed(
    'receipt-012',
    '2026-03-02',
    HAULING,
    [['Container, 10 yd, 4 days, with tipping', 46_500]],
    46_500,
    { title: 'Receipt no. 012' },
  ),
  receipt(
    'receipt-016',
    '2026-02-26',
    CAMERA,
    [
      ['Camera for an empty house', 4500],
      ['Line, prepaid, six months', 8500],
    ],
    13_975,
    { title: 'Receipt no. 016' },
  ),
  receipt(
    'receipt-019',
    '2026-04-25',
    LUMBER,
    [
      ['Pine treads, 12', 10_740],
      ['Oak rail, 14 ft, and brackets', 7860],
      ['Downspout extensions, 2', 4580],
    ],
    24_919,
  ),
  receipt(
    'receipt-022',
    '2026-03-27',
    TOLLGATE,
    [
      ['Wall paint, Barley 08, 5 gal', 16_950],
      ['Ceiling paint, 2 gal', 5280],
      ['Trim paint, Linen White, 1 gal', 4490],
      ['Rollers, tape, plastic', 2340],
    ],
    31_240,
  ),
  receipt(
    'receipt-023',
    '2026-03-30',
    TOLLGATE,
    [
      ['Stain-blocking primer, 2 gal', 8470],
      ['Dust masks', 1830],
      ['Work light', 6400],
      ['Extension ladder, 20 ft', 18_900],
    ],
    38_270,
  ),
  receipt('receipt-025', '2026-04-06', HIRE, [['Shop vacuum, used, with hose', 12_500]], 13_438),
  receipt(
    'receipt-027',
    '2026-04-10',
    HIRE,
    [
      ['Drum sander and edger, 3 days', 17_400],
      ['Floor finish, satin, 5 gal, lot F-118', 28_950],
      ['Abrasive', 6120],
    ],
    56_405,
  ),
  untaxed(
    'receipt-028',
    '2026-04-14',
    HAULING,
    [
      ['Container, 10 yd, 9 days, with tipping', 46_500],
      ['Extra weight, 0.4 ton', 3200],
    ],
    49_700,
    { title: 'Receipt no. 028' },
  ),
  receipt(
    'receipt-029',
    '2026-04-08',
    LUMBER,
    [
      ['Plywood, 1/2 in, 6 sheets', 23_340],
      ['Screws, 5 lb', 1890],
      ['Levelling compound, 2 bags', 5760],
    ],
    33_314,
  ),
  receipt(
    'receipt-031',
    '2026-04-03',
    TOLLGATE,
    [['Vinyl plank, ash, 7 x 48, lot A2219, 8 boxes', 43_920]],
    47_214,
  ),
  receipt(
    'receipt-032',
    '2026-04-22',
    TOLLGATE,
    [
      ['Thinset, 4 bags', 7160],
      ['Grout, mid grey 07 and warm grey 11', 3640],
      ['Spacers', 980],
    ],
    12_664,
  ),
  receipt(
    'receipt-033',
    '2026-04-28',
    TOLLGATE,
    [
      ['Wall paint, Oat 12, 2 gal', 7980],
      ['Satin paint, Sage 31, 1 qt', 2790],
      ['Ceiling paint, 1 gal', 2640],
      ['Brushes', 1460],
    ],
    15_985,
  ),
  receipt('receipt-034', '2026-05-04', TOLLGATE, [['Tile saw, 7 in, with stand', 20_279]], 21_800),
  receipt(
    'receipt-036',
    '2026-05-09',
    TOLLGATE,
    [
      ['Wall tile, white, 3 x 6, 44 sq ft', 14_630],
      ['Grout and sealer', 4810],
      ['Kitchen faucet', 12_900],
      ['Range hood, 300', 23_800],
      ['Knobs and pulls', 9240],
    ],
    70_284,
  ),
  receipt('receipt-037', '2026-05-14', APPLIANCES, [['Refrigerator, RF-18', 89_800]], 96_535),
  receipt(
    'receipt-038',
    '2026-05-16',
    TOLLGATE,
    [
      ['Outside paint, Rain Blue 45, 3 gal', 11_970],
      ['Wall paint, Reed 14, 1 gal', 3990],
      ['Board, tape, compound', 2770],
    ],
    20_135,
  ),
  receipt('receipt-039', '2026-05-15', SECOND, [['Electric range, used, about 2021', 30_233]], 32_500),
  untaxed('receipt-040', '2026-05-08', GLAZING, [['Tub, 5 ft, stripped and coated white', 39_500]], 39_500),
  receipt(
    'receipt-041',
    '2026-04-21',
    TOLLGATE,
    [
      ['Hexagon mosaic, 46 sq ft', 11_800],
      ['Wall tile, white, 3 x 6, 110 sq ft', 17_360],
      ['Cement board and membrane', 16_420],
      ['Vanity with top', 38_900],
      ['Toilet', 17_900],
      ['Bath faucet', 8450],
    ],
    119_142,
  ),
  receipt(
    'receipt-044',
    '2026-05-20',
    TOLLGATE,
    [
      ['Carpet, wheat, lot C-7730', 41_200],
      ['Floor finish, satin, 1 gal', 6400],
      ['Alarms, 4', 15_400],
      ['Thermostat', 7900],
    ],
    76_218,
  ),
  untaxed(
    'receipt-052',
    '2026-06-05',
    TOWN,
    [['Tannery Lane, new sidewalk panels, lot 2, paid off', 28_600]],
    28_600,
    {
      title: 'Receipt for a local improvement charge',
      after: ['', 'One charge for the lot. Nothing is left to pay.'],
    },
  ),
  untaxed('receipt-055', '2026-06-16', BROOM, [['Whole house, two people, one day', 24_000]], 24_000, {
    title: 'Receipt no. 055',
    lines: ['At: 212 Tannery Lane', ''],
  }),
  untaxed('receipt-056', '2026-06-17', PICTURES, [['Photos of house and yard, twenty-five', 24_000]], 24_000),
  untaxed(
    'receipt-060',
    '2026-07-08',
    TREASURER,
    [
      ['Parcel 31-0418-077, tax of 2026, first half', 160_050],
      ['Received through Fallow Title Agency, February 17', -41_218],
    ],
    118_832,
    { title: 'Tax receipt' },
  ),
  untaxed(
    'receipt-061',
    '2026-08-08',
    MOWING,
    [
      ['May, two cuts', 9000],
      ['June, two cuts', 9000],
      ['July, two cuts', 9000],
      ['August, one cut', 4500],
    ],
    31_500,
    { title: 'Receipt for mowing, 2026' },
  ),
  invoice(
    'invoice-001',
    '2026-02-20',
    MUTUAL,
    [['Dwelling, vacant, February 20 to August 20, 2026', 48_600]],
    48_600,
    {
      title: 'Bill for a policy',
      after: ['', 'In two instalments of $243.00, on February 20 and May 20, 2026.'],
    },
  ),
  invoice(
    'invoice-003',
    '2026-03-06',
    TESTING,
    [
      ['Eighteen places, chemical kit', 36_000],
      ['Laboratory, three chips', 18_000],
    ],
    54_000,
  ),
  invoice(
    'invoice-005',
    '2026-03-24',
    CHIMNEY,
    [
      ['Two flues swept, camera', 21_500],
      ['Second flue closed at the cellar', 5000],
      ['Crown sealed', 2000],
    ],
    28_500,
    { after: ['', 'Paid in cash.'] },
  ),
  invoice(
    'invoice-007',
    '2026-04-16',
    PLUMBING,
    [
      ['Water heater, set and piped', 186_000],
      ['Water lines, kitchen and bath', 171_500],
      ['Drain arm, stops, permit', 61_100],
    ],
    418_600,
  ),
  invoice('invoice-009', '2026-04-28', SURVEY, [['Plat of lot 2 and two pins marked', 78_000]], 78_000),
  invoice(
    'invoice-010',
    '2026-05-02',
    HEATING,
    [
      ['Furnace service', 14_000],
      ['Filter, 16 x 25 x 1', 2500],
    ],
    16_500,
  ),
  invoice(
    'invoice-012',
    '2026-05-20',
    ELECTRIC,
    [
      ['Three kitchen circuits', 198_000],
      ['Counter receptacles', 42_000],
      ['Bath fan with duct', 38_500],
      ['Permit', 15_500],
    ],
    294_000,
  ),
  invoice(
    'invoice-015',
    '2026-05-25',
    MILL_RACE,
    [
      ['Window casings, living room', 118_000],
      ['Bath wall taken down', 46_000],
      ['Kitchen fronts, made and sprayed', 412_000],
      ['Front steps, rail, porch guard', 411_000],
    ],
    987_000,
    {
      lines: ['Certified lead renovation firm.', ''],
      after: [
        '',
        ['Deposit, received March 16, 2026', '$3,000.00'],
        ['Balance, received May 25, 2026', '$6,870.00'],
      ],
    },
  ),
  invoice(
    'invoice-018',
    '2026-05-13',
    COUNTERS,
    [
      ['Quartz slab, pale grey fleck, cut and set', 285_500],
      ['Sink, single bowl, stainless steel', 30_500],
      ['Old counter taken away', 10_000],
    ],
    326_000,
  ),
  invoice(
    'invoice-022',
    '2026-06-18',
    STAGING,
    [['Furniture of four rooms, June 18 to July 17', 62_000]],
    62_000,
    { after: ['', 'Paid by card.'] },
  ),
  invoice(
    'invoice-023',
    '2026-07-17',
    STAGING,
    [['Furniture of four rooms, July 18 to August 17', 62_000]],
    62_000,
    { after: ['', 'Paid by card.'] },
  ),
  invoice(
    'invoice-024',
    '2026-08-11',
    STAGING,
    [
      ['Bringing, June 18', 39_000],
      ['Taking away, August 11', 39_000],
    ],
    78_000,
    { after: ['', 'Paid by card.'] },
  ),
  {
    file: 'rebate-letter.pdf',
    date: '2026-06-10',
    head: FUND,
    title: 'Rebate for a water heater',
    lines: [
      ['For', 'electric tank, 50 gallons, serial X26020417'],
      ['At', '212 Tannery Lane, Fallow Mills'],
      ['Paid to your account', '$300.00'],
      '',
      'Serial number and plumbing permit were checked.',
    ],
  },
  statement(
    'closing-statement',
    '2026-02-17',
    TITLE,
    [
      ['Price of the house', 14_800_000],
      ['Title work and recording', 118_450],
      ['Tax of 2026, seller’s 47 of 365 days, left to the buyer', 41_218],
      ['File fee of the lender', 65_000],
    ],
    15_024_668,
    {
      title: 'Closing statement of the purchase',
      lines: ['212 Tannery Lane, Fallow Mills, parcel 31-0418-077', ''],
      after: [
        ['Paid by Fallow Savings Bank', '$100,000.00'],
        ['Paid by wire', '$50,246.68'],
        '',
        'The county’s bill for 2026 is $3,201.00. The seller did not pay back his share.',
      ],
      totalLabel: 'Due from the buyer',
    },
  ),
  statement(
    'loan-statement',
    '2026-08-18',
    BANK,
    [
      ['Interest, February 17 to 28', 32_000],
      ['Interest, March', 80_000],
      ['Interest, April', 80_000],
      ['Interest, May', 80_000],
      ['Interest, June', 80_000],
      ['Interest, July', 80_000],
    ],
    432_000,
    {
      title: 'Statement of the note of February 17, 2026',
      lines: ['Principal $100,000.00, 9.6 percent, months of 30 days, interest only', ''],
      after: [
        '',
        'Interest of August 1 to 13, $346.67, and the principal were paid at closing',
        'on August 14, 2026.',
      ],
      totalLabel: 'Interest paid in monthly bills',
    },
  ),
  statement(
    'sale-statement',
    '2026-08-14',
    TITLE,
    [
      ['Commission, Market Square Realty, 5.5 percent', 1_353_000],
      ['Conveyance fee of the county', 98_400],
      ['Title and closing, seller’s half', 86_825],
      ['Deed, prepared', 17_500],
      ['Credit to the buyer, steps permit and garage opener', 150_000],
      ['Tax of 2026, 225 of 365 days, $1,973.22, less $1,600.50 paid', 37_272],
      ['Interest, August 1 to 13, Fallow Savings Bank', 34_667],
    ],
    1_777_664,
    {
      title: 'Settlement statement of the sale, seller’s side',
      lines: ['212 Tannery Lane, Fallow Mills, parcel 31-0418-077', ['Price', '$246,000.00'], '', 'Charges'],
      after: [
        '',
        ['Principal paid off, Fallow Savings Bank', '$100,000.00'],
        ['Paid to the seller by wire', '$128,223.36'],
      ],
      totalLabel: 'Charged to the seller',
    },
  ),
]);
