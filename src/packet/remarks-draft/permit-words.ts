/** What stands of a permit, told with the work it is for: an open or missing one is never left out. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import { printDate } from '../../facts/date.js';
import type { Permit } from '../../facts/house.js';
import { backed, type DraftRules } from './backing.js';
import type { Piece } from './draft-unit.js';

/** What kind of permit it is, as far as the paper's own name tells. A “roof permit closed in 2025” would date the roof. */
function permitName({ context }: DraftRules, permit: Permit): string {
  const papers = context.house.documents.filter(
    (one) => one.kind === 'permit' && permit.evidence.includes(one.id),
  );
  const kind = papers
    .map(
      ({ what }) =>
        /\b(building|electrical|mechanical|plumbing|pool(?: barrier)?)\b(?= permit)/i.exec(what)?.[0],
    )
    .find((one) => one !== undefined);
  return kind === undefined ? 'permit' : `${kind.toLowerCase()} permit`;
}

/**
 * "plumbing permit closed April 2026", "permit open, not final", "no permit found". Empty: there is none to tell of.
 * Undefined: one has to be told of and may not be, so that the work can't be told either. `subject`: what the permit
 * is of, where that is another thing than the words before it are about.
 */
export function permitPieces(
  rules: DraftRules,
  id: string | undefined,
  subject?: string,
): readonly Piece[] | undefined {
  if (id === undefined) return [];
  const { permits } = rules.context.house;
  const index = permits.findIndex((one) => one.id === id);
  const permit = permits[index];
  if (permit === undefined) return [];
  const path: FactPath = ['permits', index];
  const known = {
    from: permit.from,
    // The permit is a paper itself; one that was asked for and not found is known by the answer.
    evidence: [...permit.evidence, permit.id],
  };
  const text = stateWords(permit, permitName(rules, permit), subject === undefined ? '' : ` for ${subject}`);
  const backing = backed(rules, known, `Permit for ${permit.what}`, path);
  if (backing !== undefined) return [{ text, backing }];
  return permit.state === 'final' ? [] : undefined;
}

/** `subject`: " for the room", or nothing. */
export function stateWords({ state, final }: Permit, name: string, subject: string): string {
  switch (state) {
    case 'final':
      return `${name}${subject} closed${final === undefined ? '' : ` ${closedIn(final)}`}`;
    case 'open':
      return `${name}${subject} open, not final`;
    case 'expired':
      return `${name}${subject} expired without a final inspection`;
    case 'none-found':
      return `no permit found${subject}`;
    case 'not-known':
      return `state of the permit${subject} not known`;
  }
}

/** "May 2026": a listing needs no day. */
const closedIn = (final: NonNullable<Permit['final']>): string =>
  final.precision === 'day' ? printDate(final).replace(/^\d+ /, '') : printDate(final);

/** What has to be said of a room that was added without a final permit; undefined where it may not be said. */
export function unpermitted(rules: DraftRules, room: string, subject: string): readonly Piece[] | undefined {
  const { house } = rules.context;
  const adding = house.work.filter((item) => item.did === 'added' && item.where.includes(room));
  for (const item of adding) {
    const permit = house.permits.find((one) => one.id === item.permit);
    if (permit !== undefined && permit.state !== 'final') return permitPieces(rules, permit.id, subject);
  }
  return [];
}

/**
 * What has to be said of a garage or pool whose own permit was looked for and not found, or not closed: no field ties
 * the two, so that the permit's words have to name nothing else. Undefined where it may not be said.
 */
export function unpermittedStructure(
  rules: DraftRules,
  names: readonly string[],
): readonly Piece[] | undefined {
  const own = rules.context.house.permits.find(
    ({ state, what }) => state !== 'final' && names.includes(what.toLowerCase().replace(/^the /, '')),
  );
  if (own === undefined) return [];
  // That nobody knows of a permit is no finding, and a draft tells nothing that is not known.
  return own.state === 'not-known' ? [] : permitPieces(rules, own.id, 'it');
}
