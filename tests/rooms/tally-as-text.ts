/** What was worked out of a house's safety, ages, dates and gaps, as lines of text: whatever changes in it shows as a changed line. */
import { printFactPath } from '../../src/diagnostics/fact-path.js';
import { deriveTally } from '../../src/tally/tally.js';
import { houseFrom, type PartialSpec } from './house-from.js';

const TOLD = ['tally.date-order', 'tally.future', 'tally.label', 'tally.lead', 'tally.no-life'];

export function tallyAsText(spec: PartialSpec, asOf: string): string {
  const { tally, diagnostics } = deriveTally(houseFrom(spec), asOf);
  const { alarms, observations, lead, ages, warranties, gaps } = tally;
  const blocks = [
    [
      'alarms',
      ...alarms.places.map(
        ({ warns, why, where, at, nameable, recorded }) =>
          `  ${warns} | ${why} | ${where} | at ${at}, ${nameable} | recorded ${recorded.map((one) => one.where).join(' ')}`,
      ),
      `  carbon monoxide ${alarms.carbonMonoxide.asked}: ${alarms.carbonMonoxide.because.join('; ')}`,
      ...alarms.ends.map(
        ({ alarm, replaceBy, basis, due }) =>
          `  ${alarm.is} ${alarm.where}: replace by ${replaceBy}, ${basis}, due ${due}`,
      ),
      `  others ${alarms.others.map((one) => one.where).join(' ')}`,
    ],
    [
      'observations',
      ...observations.flatMap(({ id, path, topic, what, observed, figure, stands, evidence }) => [
        `  ${id} ${printFactPath(path)} | ${topic} | ${what} | ${stands} | evidence ${evidence.join(' ')}`,
        `    ${observed}`,
        `    ${figure}`,
      ]),
    ],
    [
      'lead',
      `  ${lead.target}, treated as ${lead.treatAsTarget}: ${lead.because}`,
      ...lead.jobs.flatMap(
        ({ where, path, areaWords, verdict, verdictWords, whoWords, keepRecordsThrough }) => [
          `  ${where} ${printFactPath(path)} | ${areaWords} | ${verdict} | keep through ${keepRecordsThrough}`,
          `    ${verdictWords}; ${whoWords}`,
        ],
      ),
      ...lead.unrecorded.map(({ path }) => `  no area: ${printFactPath(path)}`),
      `  ask: ${lead.ask !== undefined}`,
    ],
    [
      'asbestos',
      ...lead.asbestos.map(
        ({ id, path, material, where, words, evidence }) =>
          `  ${id} ${printFactPath(path)} | ${material} | ${where} | ${words} | evidence ${evidence.join(' ')}`,
      ),
    ],
    [
      'ages',
      ...ages.map(
        ({ system, path, basis, age, component, comparison }) =>
          `  ${printFactPath(path)} ${system.is} | ${basis} | ${JSON.stringify(age)} | ${component?.name} | ${JSON.stringify(comparison)}`,
      ),
    ],
    [
      'warranties',
      ...warranties.map(
        ({ path, lastDay, basis, running }) =>
          `  ${printFactPath(path)} ${lastDay} ${basis}, running ${running}`,
      ),
    ],
    [
      'gaps',
      ...gaps.map(
        ({ path, audiences, lacks, hint, rank }) =>
          `  ${rank} ${printFactPath(path)} | ${lacks} (${audiences.join(' ')}) | ${hint}`,
      ),
    ],
    [
      'told',
      ...diagnostics
        .filter(({ code }) => TOLD.includes(code))
        .map(
          ({ code, severity, path = [], message, hints = [] }) =>
            `  ${[severity, code, printFactPath(path), message, ...hints].join(' | ')}`,
        ),
    ],
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}
