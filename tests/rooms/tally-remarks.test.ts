/** The rules of the remarks, phrase by phrase, on both demo houses; and what must hold for any text. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { House } from '../../src/facts/house.js';
import { readHouse } from '../../src/intake/read-house.js';
import { advertisingStanding, newWordRule } from '../../src/tally/advertising.js';
import { checkRemarks } from '../../src/tally/remarks/check-remarks.js';
import { plainRules, sentenceOfRule } from '../../src/tally/remarks/rules.js';
import { deriveTally, type Tally } from '../../src/tally/tally.js';
import { LABELLED_AS_OF, labelledHouses } from '../remarks/corpus.js';

const root = new URL('../../', import.meta.url);

interface Read {
  readonly house: House;
  readonly tally: Tally;
}

async function read(name: string): Promise<Read> {
  const { found } = await readHouse(new URL(`content/${name}`, root).pathname, name, { everyPhoto: false });
  if (found === undefined) throw new Error(`${name} can’t be read`);
  return { house: found.house, tally: deriveTally(found.house, LABELLED_AS_OF).tally };
}

// verdict | the draft | the characters it stands on | the rule. Judged by reading the files of content/.
const QUARRY_ROAD = `
contradicted | The furnace is a year old. | a year old | date.age
contradicted | The water heater is a 50-gallon propane tank. | propane tank | kind.fuel
contradicted | Open permits: none | Open permits: none | permit
contradicted | Seller bought 03/2004. | bought 03/2004 | owners.since
contradicted | The water heater in the attic. | water heater | place
backed | A new roof was put on in 2019 by a roofer. | new roof was put on in 2019 | date.year
contradicted | The house is built on piers. | on piers | kind.foundation-kind
backed | Stick built in the old way. | Stick built | kind.frame-kind
contradicted | # of bedrooms: 4 | # of bedrooms: 4 | count.bedrooms
backed | Total bedrooms three. | Total bedrooms three | count.bedrooms
contradicted | A century-old house. | A century-old house | date.built
contradicted | First time on the market in 40 years. | First time on the market in 40 years | owners.since
contradicted | The rest of the windows were replaced too. | windows were replaced | newness.replaced
contradicted | The bath tile was laid by a tile contractor. | tile contractor | who.professional
contradicted | The plumber only came for the water heater. | The plumber only came for the water heater | who.only
contradicted | Bedroom 1 is the largest bedroom. | Bedroom 1 is the largest bedroom | size.compared
backed | The chimney was inspected. | chimney was inspected | newness.serviced
backed | The garage got a three-tab roof. | three-tab roof | kind.roof-covering
contradicted | The garage got a clay tile roof. | tile roof | kind.roof-covering
contradicted | The garage has a new roof. | new roof | newness.new
backed | A home that is not in an association. | association | dues
contradicted | Past the kitchen with its slate floor you come to the hall, where oak strip waits. | slate floor | kind.floor-covering
contradicted | There is a fourth bedroom. | fourth bedroom | count.bedrooms
backed | 1,436 sq ft plus an unfinished cellar | 1,436 sq ft | size.living-area
backed | An unfinished cellar and 1,436 sq ft of rooms above it | 1,436 sq ft | size.living-area
contradicted | 1,436 sq ft cellar | 1,436 sq ft | size.living-area
no-fact | There is no aluminum wiring here | wiring | answer
no-fact | All wiring is copper | wiring is copper | answer
wider | All the plumbing by a licensed plumber | plumbing by a licensed plumber | who.licensed
wider | Remodeled by a licensed contractor. | licensed contractor | who.licensed
wider | Completely renovated. | renovated | newness.updated
wider | Detached garage with an opener | opener | condition.out-of-use
contradicted | A walk-out cellar | cellar | there
wider | A new porch greets you | new porch | newness.new
backed | Furnace filter replaced | Furnace filter replaced | newness.replaced
backed | Bedroom 2 was not painted | painted | newness.painted
contradicted | The kitchen counter was not replaced. | kitchen counter was not replaced | newness.replaced
contradicted | A townhouse with a yard. | townhouse | house.kind
contradicted | This attached home shares a wall. | attached | house.kind
contradicted | Exclusions: none. | Exclusions: none | conveys.goes
contradicted | Year: 1931 | 1931 | date.built
contradicted | Storeys: four | Storeys: four | count.storeys
contradicted | No permits are open. | No permits are open | permit
contradicted | Baths: three full | three full | count.baths
contradicted | Built by the Millers in 1962. | 1962 | date.built
contradicted | Two-car carport out back. | Two-car carport | other-kind
backed | 3+ bedrooms | 3+ bedrooms | count.bedrooms
contradicted | The roof was replaced recently. | roof was replaced | newness.recently
contradicted | The stone cellar is dry | stone cellar | kind.foundation-material
contradicted | wide-plank walnut floors | walnut floors | kind.floor-covering
contradicted | The front door is steel | front door is steel | kind.door-material
contradicted | The landing is hardwood | hardwood | kind.floor-covering
contradicted | Tile in the pantry | Tile | kind.floor-covering
contradicted | Vinyl flooring in the bath | Vinyl flooring | kind.floor-covering
contradicted | A farmhouse sink under the window | farmhouse sink | kind.sink-mount
contradicted | Ductless mini-splits keep it cool | Ductless mini-splits | other-kind
backed | Cellar: unfinished, no bath | bath | not-there
backed | no working opener | working opener | condition.works
contradicted | The range is newer than the refrigerator. | range | date.order
backed | The house roof is newer than the furnace. | roof | date.order
contradicted | The half bath has a new toilet and a new basin. | new basin | newness.new
contradicted | How old is the furnace? A: Six years. | Six years | date.age
backed | Is the tub new? No, recoated. | recoated | newness.refinished
backed | Refinished oak in the living room; hallway floors refinished too. | floors refinished | newness.refinished
contradicted | We swapped out the furnace. | swapped out | newness.replaced
wider | The entire house was rewired. | rewired | newness.replaced
contradicted | Nothing original remains. | original | newness.original
backed | The cabinet boxes are old and the doors are new. | doors are new | newness.new
contradicted | Roof (3 yrs), gutters (7 yrs) | Roof (3 yrs | date.age
contradicted | One-owner home | One-owner home | owners.first
contradicted | Kept by the original owners since day one | original owners | owners.first
contradicted | The sellers bought this house in 2019 | bought this house in 2019 | owners.since
backed | The sellers bought this house in 2026 | bought this house in 2026 | owners.since
contradicted | There are no outstanding permits | no outstanding permits | permit
contradicted | Everything was done by licensed contractors | licensed contractors | who.licensed
contradicted | A tile contractor did the bath | tile contractor | who.professional
contradicted | Hired out: kitchen backsplash, kitchen floor | floor | who.professional
backed | Who did the wiring in the kitchen? A licensed electrician | licensed electrician | who.licensed
contradicted | The water heater was a DIY project | DIY | who.owner
contradicted | Has the basement ever been wet? No, never. | wet? No | condition.dry
contradicted | Does the garage door opener work? Yes. | work? Yes | condition.works
backed | Do the shades stay? Yes. | shades stay? Yes | conveys.stays
contradicted | All outlets are grounded | outlets are grounded | condition.grounded
backed | Kitchen fronts with a two-year workmanship warranty that transfers | a two-year workmanship warranty that transfers | warranty
contradicted | Dry basement, never any water | Dry basement | condition.dry
contradicted | The basement is dry | basement is dry | condition.dry
contradicted | bone-dry cellar | bone-dry cellar | condition.dry
contradicted | Garage door opener works | Garage door opener works | condition.works
contradicted | garage opener works | garage opener works | condition.works
contradicted | automatic garage door opener, works great | works great | condition.works
contradicted | no known issues | no known issues | condition.no-issues
contradicted | everything works | everything works | condition.no-issues
contradicted | No lead paint | No lead paint | condition.no-lead
contradicted | lead-free | lead-free | condition.no-lead
contradicted | no lead paint anywhere | no lead paint | condition.no-lead
contradicted | window shades excluded | window shades excluded | conveys.goes
contradicted | workbench does not convey | workbench does not convey | conveys.goes
contradicted | shades leave with seller | shades leave with seller | conveys.goes
contradicted | furniture included | furniture included | conveys.stays
contradicted | furniture stays | furniture stays | conveys.stays
contradicted | furniture conveys | furniture conveys | conveys.stays
contradicted | Two full baths | Two full baths | count.baths
contradicted | 3BR/2BA Cape | 2BA | count.baths
contradicted | 3 beds/2 full baths | 2 full baths | count.baths
contradicted | Four bedrooms | Four bedrooms | count.bedrooms
contradicted | This 4-bedroom charmer | 4-bedroom | count.bedrooms
contradicted | three main-level bedrooms | three main-level bedrooms | count.bedrooms
contradicted | Two-car garage | Two-car garage | count.cars
contradicted | 2-car detached garage | 2-car | count.cars
contradicted | garage fits two cars | two cars | count.cars
contradicted | ranch | ranch | count.storeys
contradicted | two-story colonial | two-story | count.storeys
contradicted | The roof is only three years old | three years old | date.age
contradicted | The furnace was replaced two years ago | replaced two years ago | date.ago
contradicted | Built in the 1950s | Built in the 1950s | date.built
contradicted | roof replaced last year | roof replaced last year | date.within
contradicted | central air added this spring | added this spring | date.within
contradicted | Roof replaced in 2022 | Roof replaced in 2022 | date.year
contradicted | Floors refinished in 2023 | Floors refinished in 2023 | date.year
contradicted | roof ('22) | roof ('22 | date.year
contradicted | Attached garage | Attached garage | kind.attachment
contradicted | attached one-car garage | attached | kind.attachment
contradicted | cast iron tub is original pink | pink | kind.colour
contradicted | Granite countertops | Granite countertops | kind.counter-top
contradicted | Kitchen backsplash of marble | Kitchen backsplash of marble | kind.counter-top
contradicted | granite and stainless kitchen | granite | kind.counter-top
contradicted | paved driveway | paved driveway | kind.drive-surface
contradicted | concrete drive | concrete drive | kind.drive-surface
contradicted | Finished basement | Finished basement | kind.finished-state
contradicted | finished lower level | finished lower level | kind.finished-state
contradicted | full finished basement | finished basement | kind.finished-state
contradicted | Hardwood floors in the kitchen | Hardwood floors | kind.floor-covering
contradicted | hardwoods in the kitchen | hardwoods | kind.floor-covering
contradicted | tile floor in kitchen | tile floor | kind.floor-covering
contradicted | Gas water heater | Gas water heater | kind.fuel
contradicted | gas cooktop | gas cooktop | kind.fuel
contradicted | oil heat | oil heat | kind.fuel
contradicted | boiler heat | boiler heat | kind.heating-kind
contradicted | galvanized pipes | galvanized pipes | kind.pipe-material
contradicted | The drain stack is PVC | drain stack is PVC | kind.pipe-material
contradicted | Vinyl siding | Vinyl siding | kind.siding-material
contradicted | vinyl-sided | vinyl-sided | kind.siding-material
contradicted | low-maintenance vinyl exterior | vinyl exterior | kind.siding-material
contradicted | acrylic tub | acrylic tub | kind.tub-material
contradicted | tankless hot water | tankless hot water | kind.water-heater-kind
contradicted | on-demand water heater | on-demand water heater | kind.water-heater-kind
contradicted | New furnace and A/C | New | newness.new
contradicted | All new kitchen cabinets | All new kitchen cabinets | newness.new
contradicted | New tub | New tub | newness.new
contradicted | newer mechanicals | newer mechanicals | newness.newer
contradicted | original kitchen | original kitchen | newness.original
contradicted | original bathroom | original bathroom | newness.original
contradicted | original 1948 furnace | original 1948 | newness.original
contradicted | Updated 200 amp electrical panel | Updated | newness.updated
contradicted | half bath fully redone in 2026 | half bath fully redone | newness.updated
contradicted | both baths fully renovated | baths fully renovated | newness.updated
contradicted | primary suite with private bath | private bath | other-kind
contradicted | well water | well water | other-kind
contradicted | well and septic | well | other-kind
contradicted | half bath added with permit | with permit | permit
contradicted | Everything permitted and closed | permitted | permit
contradicted | all permits closed | all permits closed | permit
contradicted | Laundry on the main floor | Laundry | place
contradicted | half bath on the main level | half bath | place
contradicted | first-floor laundry | laundry | place
contradicted | 1,700+ sq ft of living space | 1,700+ sq ft | size.living-area
contradicted | over 1,500 square feet | over 1,500 square feet | size.living-area
contradicted | Nearly 1600 sf | Nearly 1600 sf | size.living-area
contradicted | quarter acre lot | quarter acre lot | size.lot
contradicted | Sits on a full quarter acre | quarter acre | size.lot
contradicted | 40-gallon water heater | 40-gallon water heater | size.rating
contradicted | new 80 gal electric water heater | 80 gal | size.rating
contradicted | 200A panel | 200A panel | size.rating
contradicted | Licensed contractor refinished the floors | Licensed contractor | who.licensed
contradicted | all work by licensed pros | all work by licensed pros | who.licensed
contradicted | water heater installed by the owner | by the owner | who.owner
contradicted | counters installed by owner | by owner | who.owner
contradicted | living room painted by professionals | by professionals | who.professional
contradicted | professionally refinished floors | professionally | who.professional
contradicted | floors were refinished by a flooring contractor | flooring contractor | who.professional
wider | hardwood throughout | hardwood | kind.floor-covering
wider | new PEX plumbing throughout | PEX plumbing | kind.pipe-material
wider | all new wiring | all new wiring | newness.new
wider | stainless appliances, all new | all new | newness.new
wider | all new electrical | all new electrical | newness.new
wider | completely rewired | completely rewired | newness.replaced
wider | fully replumbed | fully replumbed | newness.replaced
wider | fully permitted renovation | fully permitted | permit
backed | staging furniture does not convey | staging furniture does not convey | conveys.goes
backed | Workbench and window shades stay; staging furniture goes. | Workbench | conveys.stays
backed | window shades and workbench convey | window shades | conveys.stays
backed | Three bedrooms, one full bath and a half bath upstairs. | Three bedrooms | count.bedrooms
backed | Two bedrooms and the full bath on the main level. | Two bedrooms | count.bedrooms
backed | One-car detached garage, gravel drive. | One-car | count.cars
backed | one-car detached garage | one-car | count.cars
backed | 78-year-old house | 78-year-old house | date.built
backed | seven-year-old roof | seven-year-old roof | date.age
backed | 1948 storey-and-a-half with painted wood siding and a full block cellar. | 1948 | date.built
backed | built in 1948 | built in 1948 | date.built
backed | Roof of 2019 by permit; the garage roof is from about 2005. | 2019 | date.year
backed | Damp mark in the cellar after heavy rain in April 2026; downspouts lengthened since. | April 2026 | date.year
backed | sage and white cabinets | sage | kind.colour
backed | quartz counters, white tile backsplash | quartz counters | kind.counter-top
backed | unfinished cellar with workshop, laundry and storage | unfinished cellar | kind.finished-state
backed | Oak floors in the living room, hall, entry and two bedrooms were sanded and refinished in April 2026 by the owner. | Oak floors | kind.floor-covering
backed | Vinyl plank in the kitchen; pine boards in bedroom 3. | Vinyl plank | kind.floor-covering
backed | Gas furnace of about 2009 and central air, both serviced in May 2026. | Gas | kind.fuel
backed | Second-hand electric range; new refrigerator. | electric range | kind.fuel
backed | furnace and A/C serviced in May 2026 | furnace | kind.heating-kind
backed | painted wood siding | painted wood siding | kind.siding-material
backed | stainless undermount sink | stainless | kind.sink-material
backed | Cast iron tub recoated white; hexagon mosaic floor; new vanity and toilet. | Cast iron tub | kind.tub-material
backed | cast-iron tub, recoated in 2026 | cast-iron tub | kind.tub-material
backed | Public water, public sewer. | Public water | kind.water-source
backed | public water & sewer | public water | kind.water-source
backed | Wood windows kept. | Wood windows | kind.window-frame
backed | wood windows, as found | wood windows | kind.window-frame
backed | New electric water heater (2026), 50 gallons, put in by a licensed plumber with a permit. | New | newness.new
backed | Front steps and porch rail are new, the permit is open. | porch rail are new | newness.new
backed | original oak floors | original | newness.original
backed | Kitchen fronts sprayed sage and white, old boxes kept; quartz counter and white glazed tile. | sprayed | newness.painted
backed | newly painted inside | newly painted | newness.painted
backed | freshly refinished oak floors in the living room and two bedrooms | freshly refinished | newness.refinished
backed | kitchen circuits permitted and final | circuits permitted | permit
backed | the step permit is still open | step permit | permit
backed | Half bath upstairs: no permit was found. | Half bath | place
backed | half bath up | half bath | place
backed | about 1,440 sq ft | about 1,440 sq ft | size.living-area
backed | just over 1,400 square feet | just over 1,400 square feet | size.living-area
backed | 0.21 acre lot per the plat. 1,436 sq ft measured; 1,410 by the county card. | 0.21 acre lot | size.lot
backed | fifth of an acre | fifth of an acre | size.lot
backed | 150 amp service as found. | 150 amp service | size.rating
backed | 50-gallon electric water heater, 2026 | 50-gallon | size.rating
backed | known items: damp corner in cellar, cracked second flue, two-prong outlets in the bedrooms | cellar | there
backed | Three kitchen circuits and the bath fan by a licensed electrician. | bath fan by a licensed electrician | who.licensed
backed | water heater by a licensed plumber, with permit, final | water heater by a licensed plumber | who.licensed
contradicted | garage with room for two | two | count.cars
contradicted | Parking for two in the garage | two | count.cars
contradicted | Garage spaces: 2 | 2 | count.cars
contradicted | triple garage | triple | count.cars
contradicted | Two-and-a-half bathrooms | Two-and-a-half bathrooms | count.baths
backed | One-and-a-half bathrooms | One-and-a-half bathrooms | count.baths
contradicted | a second full bathroom | second full bathroom | count.baths
contradicted | Bath count: 2 | 2 | count.baths
contradicted | a sixth bedroom | sixth bedroom | count.bedrooms
contradicted | Bedrooms – five | five | count.bedrooms
contradicted | four large and cheerful bedrooms | four large and cheerful bedrooms | count.bedrooms
contradicted | Bring all offers on this five-bedroom home | five-bedroom | count.bedrooms
backed | On the main floor are two bedrooms | two bedrooms | count.bedrooms
contradicted | Upstairs are two bedrooms | two bedrooms | count.bedrooms
contradicted | The kitchen is smaller than the bathroom | kitchen is smaller than the bathroom | size.compared
backed | The bathroom is smaller than the kitchen | bathroom is smaller than the kitchen | size.compared
contradicted | more bathrooms than bedrooms | more bathrooms than bedrooms | count.compared
backed | bigger than the county says | bigger than the county | size.compared
contradicted | bigger than the county says, by over 90 square feet | by over 90 sq | size.compared
contradicted | 1,550+ sq ft | 1,550+ sq ft | size.living-area
contradicted | 1.7k sq ft | 1.7k sq ft | size.living-area
contradicted | sixteen hundred square feet | sixteen hundred square feet | size.living-area
backed | 1,410 sq ft, so says the county card | 1,410 sq ft | size.living-area
contradicted | 225 amp electric | 225 amp | size.rating
contradicted | a 44-inch vanity | 44-inch vanity | size.extent
contradicted | double vanity | double vanity | count.things
contradicted | dates from 1931 | 1931 | date.built
contradicted | built barely 12 years ago | 12 years ago | date.built
contradicted | this eight-year-old beauty | eight-year-old | date.built
contradicted | new construction | new construction | date.built
contradicted | garage of 20-by-24 feet | 20-by-24 feet | size.room
contradicted | Replaced – furnace | furnace | newness.replaced
contradicted | Laundry: main floor | Laundry | place
contradicted | Q: And bathrooms? A: Two full. | bathrooms? A: Two full | count.baths
contradicted | Q: How many beds? A: Five. | beds? A: Five | count.bedrooms
contradicted | Q: How old is the roof? A: Two years. | roof? A: Two years | date.age
contradicted | new elect. pnl | new elect. pnl | newness.new
contradicted | Water heater replaced. So was the furnace. | furnace | newness.replaced
contradicted | The water heater is new and so is the furnace. | furnace | newness.new
contradicted | no stairs | no stairs | count.storeys
contradicted | Plumbing by Ridge Street Electric | Plumbing | who.named
`;

const LARKSPUR_COURT = `
contradicted | The dishwasher was purchased in 2012. | purchased in 2012 | date.year
contradicted | The front door: yes, 2001. | 2001 | date.year
contradicted | Granite counters installed in 2025. | Granite counters | kind.counter-top
contradicted | The crack in the hall bath tub was repaired. | crack in the hall bath tub was repaired | condition.listed
contradicted | Fog between the panes of the kitchen window was fixed. | Fog between the panes of the kitchen window was fixed | condition.listed
contradicted | Only the pool fence lacks a final inspection. | Only the pool fence lacks a final inspection | permit
contradicted | The electrician only did the panel. | The electrician only did the panel | who.only
contradicted | Total bedrooms 4. | Total bedrooms 4 | count.bedrooms
contradicted | A century-old house. | A century-old house | date.built
contradicted | The softener works great. | softener works great | condition.works
backed | double bowl sink | double bowl sink | kind.sink-bowls
no-fact | New walls in the kitchen. | New walls | newness.new
backed | The walls in the kitchen were all repainted. | repainted | newness.painted
contradicted | There is a fourth bedroom. | fourth bedroom | count.bedrooms
contradicted | A home that is not in an association. | association | dues
backed | New kitchen counters in pale quartz | New kitchen counters | newness.new
wider | Every bedroom has carpet | carpet | kind.floor-covering
backed | New smoke alarms in two bedrooms | New smoke alarms | newness.new
contradicted | The pool was replastered recently | pool was replastered | newness.recently
no-fact | The pool was replastered in the last ten years | replastered in the last ten years | date.within
wider | Plumbing redone | Plumbing redone | newness.updated
backed | Dues of $768 a year | $768 | dues
backed | Underlayment is new in 2025 | new in 2025 | date.year
backed | Underlayment was changed in 2025. Tiles are original. | Tiles are original | newness.original
backed | 2,160 sq ft of living space, 1,858 per county | 1,858 | size.living-area
no-fact | Fully fenced | fenced | not-told
wider | The hall bath is untouched | bath is untouched | newness.untouched
contradicted | The kitchen floor was not replaced | floor was not replaced | newness.replaced
backed | Roof tiles about 1991, heat pump 2013 | 1991 | date.year
backed | A ten-year warranty on the underlayment | A ten-year warranty | warranty
contradicted | block construction | block construction | kind.frame-kind
contradicted | counters of granite | counters of granite | kind.counter-top
contradicted | The hall bath has a quartz vanity | quartz vanity | kind.counter-top
contradicted | The hall bath has a walk-in shower | walk-in shower | not-there
contradicted | The primary suite has a closet and a bath with a deep tub | tub | not-there
contradicted | Marble floors in the primary bath | Marble floors | kind.floor-covering
contradicted | vaulted ceilings in the dining room | ceilings | kind.ceiling-shape
contradicted | custom cabinetry | cabinetry | newness.original
contradicted | The backsplash is glass tile | backsplash is glass | kind.tile-material
backed | zero-threshold shower | zero-threshold shower | kind.shower-step
contradicted | Over the past two years the sellers replaced the roof. | replaced the roof | newness.replaced
contradicted | The guest bath has a new toilet. | new toilet | newness.new
contradicted | The range dates to 2025. | 2025 | date.year
contradicted | The windows were all changed last year. | windows were all changed last year | date.within
contradicted | The smaller bath was gutted. | bath was gutted | newness.remade
contradicted | HVAC? Two units, both 2022. | 2022 | date.year
wider | Everything is brand new, inside and out. | brand new | newness.new
wider | New tile floors in both baths. | New | newness.new
contradicted | We threw out the old refrigerator. | threw out | newness.discarded
wider | We never touched the heat pump. | never touched | newness.untouched
backed | The underlayment was replaced on two slopes. | underlayment was replaced | newness.replaced
contradicted | The range is only a couple of years old. | range is only a couple of years old | newness.young
contradicted | The pool plaster is original. | pool plaster is original | newness.original
contradicted | The fence around the pool passed inspection | pool passed inspection | permit
contradicted | The primary bath permit was pulled by a contractor | primary bath permit was pulled by a contractor | permit.taken
contradicted | A structural engineer looked at the slab | A structural engineer looked at the slab | answer
contradicted | A termite treatment was done in 2022 | A termite treatment was done in 2022 | answer
contradicted | HOA is optional | HOA is optional | dues
contradicted | We are leaving the fridge, washer and the potted citrus | citrus | conveys.stays
backed | The citrus pots come with us | The citrus pots come with us | conveys.goes
contradicted | Primary bath remodeled by a professional crew | by a professional crew | who.professional
backed | Lights by a licensed electrician | Lights by a licensed electrician | who.licensed
backed | Not without an HOA | HOA | dues
contradicted | Softener works great | Softener works great | condition.works
contradicted | water softener included and working | working | condition.works
contradicted | No cracks in the garage floor | No cracks | condition.no-cracks
contradicted | no cracks in the slab | no cracks | condition.no-cracks
contradicted | garage floor has no cracks | floor has no cracks | condition.no-cracks
contradicted | citrus trees in pots stay | citrus trees in pots stay | conveys.stays
contradicted | citrus trees convey | citrus trees convey | conveys.stays
contradicted | 3 bed, 3 bath | 3 bath | count.baths
contradicted | two full baths | two full baths | count.baths
contradicted | Four bedrooms, 3 baths | Four bedrooms | count.bedrooms
contradicted | 4/3 pool home | 4/3 | count.bedrooms
contradicted | Three-car garage | Three-car garage | count.cars
contradicted | 3-car | 3-car | count.cars
contradicted | Two-story home with basement | Two-story | count.storeys
contradicted | two-story | two-story | count.storeys
contradicted | A/C less than 5 years old | 5 years old | date.age
contradicted | built in 1995 | built in 1995 | date.built
contradicted | built 1989 | built 1989 | date.built
contradicted | pool was replastered in 2024 | replastered in 2024 | date.year
contradicted | Microwave replaced 2025 | Microwave replaced 2025 | date.year
contradicted | HVAC replaced 2022 | HVAC replaced 2022 | date.year
contradicted | No HOA | HOA | dues
contradicted | HOA $45/month | HOA $45 | dues
contradicted | HOA $164/mo | HOA $164 | dues
contradicted | detached garage | detached garage | kind.attachment
contradicted | Granite counters in kitchen | Granite counters | kind.counter-top
contradicted | granite island | granite | kind.counter-top
contradicted | granite countertops, new cabinets | granite countertops | kind.counter-top
contradicted | Hardwood floors in the living room | Hardwood floors | kind.floor-covering
contradicted | Tile floors in the bedrooms | Tile floors | kind.floor-covering
contradicted | hardwood floors | hardwood floors | kind.floor-covering
contradicted | gas range and gas furnace | gas range | kind.fuel
contradicted | gas range | gas range | kind.fuel
contradicted | electric water heater | electric water heater | kind.fuel
contradicted | Galvanized supply pipes | Galvanized supply pipes | kind.pipe-material
contradicted | asphalt shingle roof | asphalt shingle roof | kind.roof-covering
contradicted | concrete tile roof | concrete tile roof | kind.roof-covering
contradicted | vaulted brick home | brick | kind.siding-material
contradicted | brick exterior | brick exterior | kind.siding-material
contradicted | marble shower | marble shower | kind.tub-material
contradicted | Tankless water heater | Tankless water heater | kind.water-heater-kind
contradicted | tankless | tankless | kind.water-heater-kind
contradicted | Short-term rentals welcome | Short-term rentals | lets
contradicted | New heat pump in 2021 | New | newness.new
contradicted | All new windows | All new windows | newness.new
contradicted | Brand new tile roof | Brand new | newness.new
contradicted | Newer dual-pane vinyl windows throughout | Newer dual-pane vinyl windows throughout | newness.newer
contradicted | newer heat pump | newer | newness.newer
contradicted | completely re-roofed | completely re-roofed | newness.replaced
contradicted | Hall bath fully remodeled in 2025 | bath fully remodeled | newness.updated
contradicted | hall bath remodel 2025 | remodel | newness.updated
contradicted | both baths remodeled | baths remodeled | newness.updated
contradicted | Primary bath has a soaking tub | soaking tub | not-there
contradicted | no carpet | carpet | not-there
contradicted | soaking tub in the primary | soaking tub | not-there
contradicted | Septic system, pumped last year | Septic system | other-kind
contradicted | carport | carport | other-kind
contradicted | gas furnace | gas furnace | other-kind
contradicted | Family room addition built with permits | addition built with permits | permit
contradicted | Pool fence permitted and finaled | Pool fence permitted and finaled | permit
contradicted | All work done with permits | All work done with permits | permit
contradicted | laundry room in the garage | laundry room | place
contradicted | 2,400 square feet | 2,400 square feet | size.living-area
contradicted | 1,900 sq ft | 1,900 sq ft | size.living-area
contradicted | almost 2,300 sq ft | almost 2,300 sq ft | size.living-area
contradicted | quarter-acre lot | quarter-acre lot | size.lot
contradicted | 1/4 acre | 1/4 acre | size.lot
contradicted | 50-gal water heater | 50-gal water heater | size.rating
contradicted | 100-amp service | 100-amp service | size.rating
contradicted | floors by licensed installers | floors by licensed installers | who.licensed
contradicted | Roof by the owner | Roof by the owner | who.owner
contradicted | roof by owner | roof by owner | who.owner
contradicted | electrical work by owner | electrical work by owner | who.owner
contradicted | Floors professionally installed | Floors professionally installed | who.professional
contradicted | Interior painted by professional painters | by professional | who.professional
contradicted | floors professionally laid | floors professionally laid | who.professional
wider | luxury vinyl throughout | luxury vinyl | kind.floor-covering
wider | tile throughout | tile throughout | kind.floor-covering
wider | wood-look tile in every room | wood-look tile in every room | kind.floor-covering
wider | PEX throughout | PEX | kind.pipe-material
wider | double-pane vinyl windows throughout | vinyl windows | kind.window-frame
wider | Every smoke alarm is new | Every smoke alarm is new | newness.new
wider | all new appliances | all new appliances | newness.new
wider | stainless appliances, new in 2025 | new in 2025 | newness.new
wider | tiles replaced in 2025 | tiles replaced in 2025 | newness.replaced
backed | Appliances convey; pots of citrus do not. | Appliances convey | conveys.stays
backed | leftover tiles stay | tiles stay | conveys.stays
backed | 3/2 single-level pool home | 3/2 | count.baths
backed | Three bedrooms and two baths on one level, built in 1991. | Three bedrooms | count.bedrooms
backed | 3 bedrooms, 1 full and 1 three-quarter bath | 3 bedrooms | count.bedrooms
backed | two-car attached garage | two-car | count.cars
backed | Single-story stucco home with a clay tile roof, concrete slab. | Single-story | count.storeys
backed | double vanity in the primary bath | double vanity | count.things
backed | twelve-year-old heat pump, serviced in 2025 | twelve-year-old | date.age
backed | Plank floors run through living, dining, kitchen and hall, laid by the owner in April 2025. | laid | date.year
backed | Primary bath remodeled in 2025 with a curbless walk-in shower, two basins and a quartz top. | Primary bath remodeled in 2025 | date.year
backed | HOA dues are $64 a month. | $64 | dues
backed | $64/month HOA | $64 | dues
backed | Attached two-car garage with coated floor. | Attached | kind.attachment
backed | one bedroom keeps its dark blue walls | dark blue walls | kind.colour
backed | Quartz counters, stainless undermount double-bowl sink and a glazed tile backsplash, all from May 2025. | Quartz counters | kind.counter-top
backed | quartz kitchen counters (2025) | quartz kitchen counters | kind.counter-top
backed | Kitchen cabinets keep their oak boxes and wear new painted fronts. | painted fronts | newness.painted
backed | Wood-look porcelain in the family room, vinyl plank elsewhere. | vinyl plank | kind.floor-covering
backed | gas water heater, age unknown | gas water heater | kind.fuel
backed | The heat pump dates to 2013 and was serviced in May 2025. | heat pump | kind.heating-kind
backed | heat pump of 2013 | heat pump | kind.heating-kind
backed | Copper supply pipes, PEX and PVC in the primary bath. | Copper supply pipes | kind.pipe-material
backed | PEX lines to the primary bath by a licensed plumber | PEX lines | kind.pipe-material
backed | public sewer, not septic | public sewer | kind.sewer-kind
backed | Stucco patched and repainted in part in June 2025. | Stucco | kind.siding-material
backed | stucco, clay tile roof | stucco | kind.siding-material
backed | The hall bath has its 1991 fiberglass tub and cultured marble counter. | fiberglass tub | kind.tub-material
backed | fiberglass tub in the hall bath | fiberglass tub | kind.tub-material
backed | Public water and sewer, gas water heater, electric heat pump. | Public water | kind.water-source
backed | Aluminum windows in the house, vinyl in the family room. | Aluminum windows | kind.window-frame
backed | aluminum windows | aluminum windows | kind.window-frame
backed | Nightly rentals are not allowed; thirty days is the shortest. | Nightly rentals | lets
backed | New carpet in the primary bedroom and bedroom 3. | New | newness.new
backed | New dishwasher, disposal and faucet in 2025; refrigerator is from 2019. | New dishwasher | newness.new
backed | door painted agave green | painted | newness.painted
backed | refaced kitchen cabinets | refaced kitchen cabinets | newness.refaced
backed | garage floor coated by owner | coated | newness.refinished
backed | remodeled primary bath | remodeled primary bath | newness.updated
backed | primary shower has no curb | shower | place
backed | 2,162 sq ft measured by the owner; the assessor's record says 1,858. | 2,162 sq ft | size.living-area
backed | 2,162 sf | 2,162 sf | size.living-area
backed | Lot of 8,712 sq ft, about 0.2 acre. | 8,712 sq ft | size.lot
backed | one-fifth acre | one-fifth acre | size.lot
backed | 200 amp panel, original to the house. | 200 amp panel | size.rating
backed | 200-amp panel | 200-amp panel | size.rating
backed | The water softener is bypassed and was not tried. | water softener | there
backed | Fireplace with painted brick and a tiled face. | Fireplace | there
backed | Lights and receptacles by a licensed electrician with a final permit. | receptacles by a licensed electrician | who.licensed
backed | New glass at the shower by a glass company. | shower by a glass company | who.professional
contradicted | garage for four autos | four autos | count.cars
backed | a double garage | double | count.cars
contradicted | The pool is 16 x 32 | 16 x 32 | size.extent
backed | The pool is 14 by 28 | 14 by 28 | size.extent
contradicted | a pool with a depth of up to ten feet | ten feet | size.extent
contradicted | four living areas | four living areas | count.living
contradicted | primary bedroom of 300 sq ft | 300 sq ft | size.room
contradicted | new windows upstairs | upstairs | count.storeys
contradicted | three up and one down | three up and one down | count.storeys
contradicted | two water heaters | two water heaters | count.things
contradicted | three HVAC units | three HVAC units | count.things
contradicted | The dishwasher is new; so is the heat pump | heat pump | newness.new
backed | 1,858 sq ft the county shows | 1,858 sq ft | size.living-area
backed | Roof felt by Dry Wash Roofing | Roof felt | who.named
`;

const rowsOf = (table: string): (readonly [verdict: string, draft: string, says: string, rule: string])[] =>
  table
    .trim()
    .split('\n')
    .map((line) => {
      const [verdict = '', draft = '', says = '', rule = ''] = line.split(' | ');
      return [verdict, draft, says, rule] as const;
    });

describe.each([
  ['quarry-road', QUARRY_ROAD],
  ['larkspur-court', LARKSPUR_COURT],
])('%s', (name, table) => {
  let one: Read;
  beforeAll(async () => {
    one = await read(name);
  });

  it('has rows for many rules', () => {
    expect(new Set(rowsOf(table).map(([, , , rule]) => rule)).size).toBeGreaterThan(25);
  });

  it.each(rowsOf(table))('%s: %s', (verdict, draft, says, rule) => {
    const findings = checkRemarks(draft, one.house, one.tally);
    expect(findings.map((found) => [found.verdict, found.says, found.rule])).toContainEqual([
      verdict,
      says,
      rule,
    ]);
    // A true draft is accused nowhere, and what is wrong is told with its facts.
    if (verdict === 'backed')
      expect(findings.filter((found) => found.verdict === 'contradicted')).toEqual([]);
    else expect(findings.some((found) => found.rule === rule && found.facts.length > 0)).toBe(true);
  });

  it('underlines whole characters of the draft, in its order, the same each time', () => {
    const draft = `🏠 Neu\u00ader “new” roof — naïve 2019 café roof 👩‍👧, two baths… ${rowsOf(table)
      .map(([, text]) => text)
      .join('. ')}`;
    const findings = checkRemarks(draft, one.house, one.tally);
    expect(findings.length).toBeGreaterThan(50);
    let before = 0;
    for (const { from, to, says } of findings) {
      expect(draft.slice(from, to)).toBe(says);
      expect(from).toBeGreaterThanOrEqual(before);
      expect(to).toBeGreaterThan(from);
      expect(says).toBe(Buffer.from(says).toString());
      before = from;
    }
    expect(checkRemarks(draft, one.house, one.tally)).toEqual(findings);
  });

  it.each([
    '',
    ' ',
    '\u200b\u00ad',
    '🏠🏠',
    '((((((',
    "''''''",
    '1/2/3/4',
    '$',
    '-',
    'roof'.repeat(500),
    'new '.repeat(2000),
    'roof, '.repeat(1000),
    '3/2 '.repeat(800),
    'granite in the kitchen and '.repeat(300),
    'by the by the '.repeat(500),
  ])('takes odd text without a word: %#', (draft) => {
    const findings = checkRemarks(draft, one.house, one.tally);
    for (const { from, to, says } of findings) expect(draft.slice(from, to)).toBe(says);
  });
});

describe('the rules', () => {
  it('each have one sentence', () => {
    for (const id of plainRules()) expect(sentenceOfRule(id)).toMatch(/^[A-Z].*\.$/);
    expect(sentenceOfRule('no.such-rule')).toBeUndefined();
    expect(sentenceOfRule('kind.no-such-group')).toBeUndefined();
  });

  it('are all told of that the labelled remarks bring up', async () => {
    const met = new Set<string>();
    for (const { name, folder, remarks } of labelledHouses(root, 'seen')) {
      const { found } = await readHouse(folder, name, { everyPhoto: false });
      if (found === undefined) throw new Error(name);
      const { tally } = deriveTally(found.house, LABELLED_AS_OF);
      for (const { text } of remarks)
        for (const { rule } of checkRemarks(text, found.house, tally)) met.add(rule);
    }
    expect(met.size).toBeGreaterThan(50);
    expect([...met].filter((rule) => sentenceOfRule(rule) === undefined)).toEqual([]);
  });

  it('leave the six months of “new” to the rules for advertisements', () => {
    // Federal Trade Commission, as the advertising table quotes it: six months, and a rule of its own there.
    expect(newWordRule().months).toBe(6);
    expect(advertisingStanding().id).toBe('F07');
    expect(sentenceOfRule('newness.new')).toContain('two years');
  });
});
