/** What is lacking of all that is told: questions, dues, what stays, and care. */
import type { House } from '../facts/house.js';
import { addItem, addLine, BUYER, type Gap, type GapSources, rankOf, SALE } from './gap.js';
import { askedQuestions, isAskedBy } from './tables/questions.js';

export function answerGaps({ house }: GapSources): Gap[] {
  return [
    ...questions(house),
    ...duesUnsaid(house),
    ...conveysUnsaid(house),
    ...noAddress(house),
    ...careUnsaid(house),
  ];
}

/** Those that are always asked; `sillplate ask` lists all others. */
function questions(house: House): Gap[] {
  const always = askedQuestions().filter(({ gap }) => gap === true);
  return always.flatMap(({ ask, owner }, order): Gap[] =>
    house.answers.some((answer) => isAskedBy({ owner }, answer.ask))
      ? []
      : [
          {
            path: ['answers'],
            audiences: BUYER,
            lacks: `the question “${ask}” has no answer yet`,
            hint: addItem('answers', `{ ask: "${ask}", answer: not known }`),
            rank: rankOf('question', order),
          },
        ],
  );
}

/** A shared wall mostly comes with an association; silence about its dues is no "none". */
function duesUnsaid(house: House): Gap[] {
  const shared = house.house.kind === 'attached' || house.house.kind === 'apartment-style';
  const told =
    house.dues.length > 0 || house.answers.some((answer) => /\bdues\b|association/i.test(answer.ask));
  if (!shared || told) return [];
  return [
    {
      path: ['dues'],
      audiences: SALE,
      lacks: 'whether an association asks for dues is not said',
      hint: `${addItem('dues', '{ to: owners’ association, amount: "145.00", per: month }')}  or under answers:  - { ask: Are there association dues?, answer: none }`,
      rank: rankOf('dues'),
    },
  ];
}

function conveysUnsaid(house: House): Gap[] {
  if (house.conveys.length > 0) return [];
  return [
    {
      path: ['conveys'],
      audiences: SALE,
      lacks: 'nothing says what stays and what goes',
      hint: addItem('conveys', '{ what: refrigerator, stays: yes }'),
      rank: rankOf('what stays'),
    },
  ];
}

/** Without it the open-house sheet has no code to scan, and nowhere to send a visitor who wants to read on. */
function noAddress({ house }: House): Gap[] {
  if (house.web !== undefined) return [];
  return [
    {
      path: ['house'],
      audiences: ['visit'],
      lacks: 'no web address is given, so the open-house sheet has no code to scan',
      hint: `${addLine('web: https://quarry-road.example/packet/')}  below house, with the address of your own pages`,
      rank: rankOf('web address'),
    },
  ];
}

function careUnsaid(house: House): Gap[] {
  if (house.care.length > 0) return [];
  return [
    {
      path: ['care'],
      audiences: ['care'],
      lacks: 'there is no care task',
      hint: addItem('care', '{ what: change the furnace filter, every: 3 months }'),
      rank: rankOf('care'),
    },
  ];
}
