/** The rules behind the money pages, numbered, each with its source and how closely it was read. */
import type { MoneyRule, MoneyTally } from '../../tally/money/money-tally.js';
import { HOW_READ, readingWords } from '../how-read.js';
import { ruleAnchor } from '../money-words.js';
import type { Block, Section } from '../packet.js';
import { rich, soft, strong } from '../rich.js';

export function moneyRules({ rules }: MoneyTally): Section {
  const blocks: Block[] = [
    {
      kind: 'paragraph',
      id: 'money-rules-intro',
      size: 'body',
      text: rich(
        'Each figure of the pages before names the rules that put it where it stands. They are told here in our own words, with where to read them. Rules change; the preparer has the last word.',
      ),
    },
    {
      kind: 'list',
      id: 'money-rules-list',
      items: rules.map((rule, index) => ({
        id: ruleAnchor(rule.id),
        text: rich(
          strong(`${index + 1}. `),
          rule.rule,
          ' ',
          soft(
            [sourceOf(rule), readingWords(rule.how ?? ''), rule.caution]
              .filter((one) => one !== undefined && one !== '')
              .join(' '),
          ),
        ),
      })),
    },
  ];
  return { id: 'money-rules', title: 'Rules behind the figures', blocks };
}

const sourceOf = ({ source, read }: MoneyRule): string =>
  `${source.title}, ${source.section}; ${source.publisher}; ${HOW_READ[read]}.`;
