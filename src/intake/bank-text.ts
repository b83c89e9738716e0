/** A bank's own text for a payment: cleaned before it is kept or printed, and compared with names of payees. */
import { nameKey } from '../facts/name-key.js';
import { coverTaxpayerNumbers, taxpayerNumberIn } from '../facts/taxpayer-number.js';

/** Longer than any bank writes, and as long as the name of a payee may be. */
const LONGEST = 200;
/** Numbers of accounts and cards: eight digits or more, also in the groups in which they are embossed. */
const LONG_NUMBER = /\d{8,}|\b\d{4}([ -])\d{4}\1\d{4}\1\d{1,4}\b|\b\d{4}([ -])\d{6}\2\d{5}\b/g;

/** Numbers of eight digits or more are cut to their last four: an account number is nobody's business later. */
const shortenNumbers = (text: string): string =>
  text.replace(LONG_NUMBER, (number) => `…${number.replace(/\D/g, '').slice(-4)}`);

/** As `shortenNumbers`, sign for sign, so that what stands behind a number stays in its column. */
export const coverNumbers = (text: string): string =>
  text.replace(LONG_NUMBER, (number) => number.slice(0, -4).replace(/\d/g, '•') + number.slice(-4));

/**
 * A text of a bank as it may be kept and printed: one line without control characters, long numbers shortened,
 * taxpayer numbers covered, at most 200 characters.
 */
export function bankText(raw: string): string {
  const line = raw
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .trim();
  const covered = coverTaxpayerNumbers(shortenNumbers(line));
  // A number that only the words around it tell of.
  const safe = taxpayerNumberIn(covered) === undefined ? covered : covered.replace(/\d/g, '•');
  return [...safe].slice(0, LONGEST).join('').trim();
}

/** A text without regard to capitals and runs of blanks. */
export const plainText = (text: string): string => text.replace(/\s+/gu, ' ').trim().toUpperCase();

/** Words of a text in capitals, without digits and signs: what two payments at one store have in common. */
export const stemOf = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[’']/gu, '')
    .replace(/[^\p{L}]+/gu, ' ')
    .trim();

/** Names are one if they differ only in capitals, blanks and signs. */
export const sameName = (a: string, b: string): boolean => a === b || nameKey(a) === nameKey(b);

const BARE = new Set(
  (
    'CHECK|CHECKS|CHECK PAID|PAID CHECK|CHECK NO|CHK|CHEQUE|CK|DRAFT|SUBSTITUTE CHECK|DEPOSIT|WITHDRAWAL|ATM|' +
    'ATM WITHDRAWAL|CASH WITHDRAWAL|CASH|TRANSFER|ONLINE TRANSFER|WIRE|WIRE TRANSFER|ACH|ACH DEBIT|DEBIT|CREDIT|' +
    'PAYMENT|BILL PAY|BILL PAYMENT|PURCHASE|POS|POS DEBIT|POS PURCHASE|DEBIT CARD PURCHASE|CARD PURCHASE|REFUND|FEE'
  ).split('|'),
);

/** The text names nobody: a check, a transfer. */
export const namesNobody = (text: string): boolean => stemOf(text) === '' || BARE.has(stemOf(text));

/** It can be told apart by its words alone. */
const isTelling = (stem: string): boolean => !BARE.has(stem) && (stem.includes(' ') || stem.length >= 6);

/** Two texts of a bank are about one payee: the same words, other numbers. */
export const sameStem = (a: string, b: string): boolean =>
  a === b || (isTelling(stemOf(a)) && stemOf(a) === stemOf(b));

/** The bank's text holds the whole name of a payee, word for word. */
export const holdsName = (text: string, name: string): boolean =>
  isTelling(stemOf(name)) && ` ${stemOf(text)} `.includes(` ${stemOf(name)} `);

/** A name and a bank's text that may be one payee: the same name, the name in the text, or the same first word. */
export function alike(text: string, name: string): boolean {
  if (sameName(text, name) || holdsName(text, name)) return true;
  const first = stemOf(name).split(' ')[0] ?? '';
  return first.length >= 4 && !BARE.has(first) && ` ${stemOf(text)} `.includes(` ${first} `);
}
