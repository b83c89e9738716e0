/** Where a law stands, as it is printed under what was taken from it. */
import type { DutyRule } from '../../tally/tables/duties.js';

/** "Florida Statutes s. 404.056, subsection (5); Florida Legislature": a section that the title ends with is told once. */
export function citation({ title, section, publisher }: Omit<DutyRule['source'], 'edition'>): string {
  const [number = ''] = section.split(' ');
  const told = /\d/.test(number) && title.split(' ').at(-1) === number;
  return `${told ? `${title}${section.slice(number.length)}` : `${title}, ${section}`}; ${publisher}`;
}
