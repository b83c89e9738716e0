/** White space between blocks, in points. Of two spaces that meet, the larger counts. */
export interface Spaces {
  /** Above a section's rule, between the rule and the title, and below the title. */
  readonly aboveSection: number;
  readonly sectionRule: number;
  readonly belowSection: number;
  readonly aboveHeading3: number;
  readonly aboveHeading4: number;
  readonly belowHeading: number;
  /** Around statements, paragraphs and lists; between the items of a list. */
  readonly text: number;
  readonly item: number;
  readonly question: number;
  readonly table: number;
  readonly record: number;
  readonly notice: number;
  readonly figure: number;
  /** Above and below the text of a table's row. */
  readonly rowPad: number;
}

const AIRY: Spaces = {
  aboveSection: 25,
  sectionRule: 9,
  belowSection: 8,
  aboveHeading3: 15,
  aboveHeading4: 12,
  belowHeading: 3.5,
  text: 5.5,
  item: 2.5,
  question: 9,
  table: 12,
  record: 8,
  notice: 13.5,
  figure: 10,
  rowPad: 2.3,
};

const DENSE: Spaces = {
  aboveSection: 13,
  sectionRule: 4,
  belowSection: 3,
  aboveHeading3: 7,
  aboveHeading4: 6,
  belowHeading: 1.5,
  text: 3.5,
  item: 1.4,
  question: 6,
  table: 7,
  record: 6,
  notice: 9,
  figure: 7,
  rowPad: 1.7,
};

/** The spaces of an edition; the dense ones are for the agent's few pages. */
export function spacesOf(dense: boolean): Spaces {
  return dense ? DENSE : AIRY;
}
