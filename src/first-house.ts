import { typedInYaml } from './facts/typed-in-yaml.js';

export interface FirstAnswers {
  name: string;
  city: string;
  state: string;
  /** A date as written, or "not known". */
  built: string;
  bought: string | undefined;
}

/** The text of a first house.yaml: short, commented, and free of errors. `schema` is the path editors complete from. */
export function firstHouse(answers: FirstAnswers, schema: string): string {
  return `# yaml-language-server: $schema=${schema}
#
# The facts of one house. Write each fact once; every page, sheet and export reads it from here.
# A fact is short    built: 1948
# or long            built: { is: 1948, from: county record, evidence: [county-card] }
# or                 built: not known        (which is printed as such, and is never the same as "no")
# Dates may be       2026-04-11, 2026-04, 2019~ (about), ../2010 (2010 or before), 2015/2019 (between)
# Lengths carry their unit: 11'6", 11 ft 6 in, 11.5 ft, 3.5 m

house:
  name: ${typedInYaml(answers.name)}
  address:
    # street: 212 Quarry Road
    city: ${typedInYaml(answers.city)}
    state: ${answers.state}
    # zip: "44999"            # in quotes, or YAML drops a leading zero
    show: street-withheld     # full, street-withheld or city-only
  kind: detached              # detached, attached, apartment-style or manufactured
  built: ${answers.built}
  ${answers.bought === undefined ? '# bought: 2026-02-17' : `bought: ${answers.bought}`}
  # lot: 0.21 acre
  # web: https://my-house.example/   # where the buyer packet's pages will be; the open-house sheet gets a code to scan

# Who was hired. \`by: ridge-plumbing\` elsewhere names one of them. To begin such a list, take the # and the blank behind
# it away from the word and from the line below; likewise farther down.
# people:
#   - { id: ridge-plumbing, name: Ridge Street Plumbing, trade: plumber, licence: OH-PL-00000 }

# measured: { by: owner, date: 2026-06-14, method: ansi-z765-2021 }
# record: { area: "1,410 sq ft", source: county card }

# The floors of the house. Walk the outside walls from one corner back to it; take the # away once you have taped them.
levels:
  - id: main
    name: Main level
    grade: above
    # outline: [east 40', north 26', west 40', south 26']
    # ceiling: 8'

rooms:
  - id: kitchen
    level: main
    use: kitchen
    # size: 11'6" x 12'       # inside, east-west x north-south
    # finishes:
      # - { on: floor, what: vinyl plank, plank: 7" x 48", colour: ash, lot: "A2219", done: 2026-04, by: owner }
      # - { on: walls, what: paint, colour: oat, code: "X-104", base: white base, sheen: eggshell, done: 2026-05, by: owner }

# systems:
#   - id: water-heater
#     is: water heater, tank, electric
#     made: 2026-01
#     installed: 2026-04-11
#     by: ridge-plumbing

# What was done.
# work:
#   - { id: cellar-rail, what: "handrail, cellar stair", did: new, done: 2026-05-12, by: owner, safety: yes }

# Known and not mended, said plainly.
# conditions:
#   - { what: garage door opener does not run, since: as bought }

# Papers in documents/, by id. Facts name them under evidence.
# documents:
#   - { id: county-card, what: county property card, kind: record, date: 2026-02-17 }

# Photos in photos/, by file name without its ending.
# photos:
#   IMG_0412: { shows: kitchen, when: before, where: kitchen, alt: Dark cabinets and a worn floor. }

# Questions buyers ask, answered once.
# answers:
#   - { ask: Has water ever come in?, answer: not known }
`;
}
