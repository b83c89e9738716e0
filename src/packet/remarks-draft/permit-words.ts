/** What stands of a permit, told with the work it is for: an open or missing one is never left out. */
import type { FactPath } from '../../diagnostics/fact-path.js';
import type { Permit } from '../../facts/house.js';
import { backed, type DraftRules } from './backing.js';
import type { Piece } from './draft-unit.js';

/** What kind of permit it is, as far as the paper's own name tells. */
function permitName({ context }: DraftRules, permit: Permit): string {
  const papers = context.house.documents.filter(
    (one) => one.kind === 'permit' && permit.evidence.includes(one.id),
  );
  const kind = papers
    .map(
      ({ what }) =>
        /\b(building|electrical|mechanical|plumbing|pool(?: barrier)?|roof)\b(?= permit)/i.exec(what)?.[0],
    )
    .find((one) => one !== undefined);
  return kind === undefined ? 'permit' : `${kind.toLowerCase()} permit`;
}

/**
 * "plumbing permit closed 2026-04-16", "permit open, not final", "no permit found". Empty: there is none to tell of.
 * Undefined: one has to be told of and may not be, so that the work can't be told either.
 */
export function permitPieces(rules: DraftRules, id: string | undefined): readonly Piece[] | undefined {
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
  const text = stateWords(permit, permitName(rules, permit));
  const backing = backed(rules, known, `Permit for ${permit.what}`, path);
  if (backing !== undefined) return [{ text, backing }];
  return permit.state === 'final' ? [] : undefined;
}

function stateWords({ state, final }: Permit, name: string): string {
  switch (state) {
    case 'final':
      return final === undefined ? `${name} closed` : `${name} closed ${closedOn(final)}`;
    case 'open':
      return `${name} open, not final`;
    case 'expired':
      return `${name} expired without a final inspection`;
    case 'none-found':
      return 'no permit found';
    case 'not-known':
      return 'state of the permit not known';
  }
}

/** The day as the office writes it, or as much of it as is known. */
const closedOn = ({ precision, written, latest }: NonNullable<Permit['final']>): string =>
  precision === 'day' ? (latest ?? written) : written;

/** What has to be said of a room that was added without a final permit; undefined where it may not be said. */
export function unpermitted(rules: DraftRules, room: string): readonly Piece[] | undefined {
  const { house } = rules.context;
  const adding = house.work.filter((item) => item.did === 'added' && item.where.includes(room));
  for (const item of adding) {
    const permit = house.permits.find((one) => one.id === item.permit);
    if (permit !== undefined && permit.state !== 'final') return permitPieces(rules, permit.id);
  }
  return [];
}
