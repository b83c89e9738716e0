/**
 * How well a checker finds what was labelled by hand: for each label, the heaviest verdict among the findings that
 * lie mostly inside it, or that it lies mostly inside of.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { load } from 'js-yaml';

type Verdict = 'backed' | 'contradicted' | 'wider' | 'no-fact' | 'opinion';

interface Label {
  readonly says: string;
  readonly at?: number;
  readonly is: Verdict;
  readonly or?: readonly Verdict[];
  readonly why?: string;
}

export interface Remark {
  readonly id: string;
  readonly text: string;
  readonly claims: readonly Label[];
}

export interface Found {
  readonly from: number;
  readonly to: number;
  readonly verdict: Verdict;
  readonly says: string;
  readonly rule: string;
}

export interface Scored {
  readonly remark: Remark;
  readonly label: Label;
  readonly from: number;
  readonly to: number;
  /** Undefined where nothing was found there. */
  readonly verdict: Verdict | undefined;
  readonly found: readonly Found[];
}

/** The remarks of one house in one half. */
export function readRemarks(folder: URL, house: string): Remark[] {
  return load(readFileSync(new URL(`${house}.yaml`, folder), 'utf8')) as Remark[];
}

export const housesOf = (folder: URL): string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length))
    .sort();

const WEIGHT: readonly Verdict[] = ['contradicted', 'wider', 'no-fact', 'backed', 'opinion'];

export function scoreRemark(remark: Remark, found: readonly Found[]): Scored[] {
  return remark.claims.map((label) => {
    const from = placeOf(remark, label);
    const to = from + label.says.length;
    const inside = found.filter((one) => {
      const shared = Math.min(one.to, to) - Math.max(one.from, from);
      return shared > 0 && shared >= Math.min(one.to - one.from, to - from) / 2;
    });
    const verdict = WEIGHT.find((wanted) => inside.some((one) => one.verdict === wanted));
    return { remark, label, from, to, verdict, found: inside };
  });
}

function placeOf({ id, text }: Remark, { says, at = 1 }: Label): number {
  let from = -1;
  for (let times = 0; times < at; times++) from = text.indexOf(says, from + 1);
  if (from < 0) throw new Error(`${id}: the text does not hold “${says}” (${at})`);
  return from;
}

export interface Figures {
  readonly labels: number;
  /** Labels with a verdict that the label allows. */
  readonly right: number;
  /** Contradicted claims; how many were called so, or too wide where the label allows both; how many one or the other. */
  readonly contradicted: number;
  readonly caught: number;
  readonly flagged: number;
  /** True claims, and how many were called contradicted, or contradicted or too wide. */
  readonly backed: number;
  readonly accused: number;
  readonly doubted: number;
  /** Findings called contradicted, and how many of them lie on a label that allows it. */
  readonly calls: number;
  readonly rightCalls: number;
}

export function figuresOf(scored: readonly Scored[]): Figures {
  const count = (test: (one: Scored) => boolean): number => scored.filter(test).length;
  const allows = ({ label }: Scored, verdict: Verdict | undefined): boolean =>
    verdict !== undefined && (label.is === verdict || label.or?.includes(verdict) === true);
  const wrong = ({ label }: Scored): boolean => label.is === 'contradicted';
  const so = ({ label }: Scored): boolean =>
    label.is === 'backed' && !label.or?.some((one) => one === 'contradicted' || one === 'wider');
  return {
    labels: scored.length,
    right: count((one) => allows(one, one.verdict)),
    contradicted: count(wrong),
    caught: count(
      (one) =>
        wrong(one) && (one.verdict === 'contradicted' || (one.verdict === 'wider' && allows(one, 'wider'))),
    ),
    flagged: count((one) => wrong(one) && (one.verdict === 'contradicted' || one.verdict === 'wider')),
    backed: count(so),
    accused: count((one) => so(one) && one.verdict === 'contradicted'),
    doubted: count((one) => so(one) && (one.verdict === 'contradicted' || one.verdict === 'wider')),
    calls: count((one) => one.verdict === 'contradicted'),
    rightCalls: count((one) => one.verdict === 'contradicted' && allows(one, 'contradicted')),
  };
}
