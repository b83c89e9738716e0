/** What a reader sees of a page, as lines of text: for comparing, not for styling. */
import { decoded } from '../rooms/rendered-sample.js';

const INLINE = 'a|abbr|b|bdi|br|cite|code|em|i|mark|small|span|strong|sub|sup|time|tspan|use|wbr';

/** One line a block; pictures by their alternative text. The head (but for its title), styles and defs are left out. */
export function readablePage(html: string): string {
  const title = /<title>([\s\S]*?)<\/title>/u.exec(html)?.[1] ?? '';
  const body = html
    .slice(Math.max(0, html.indexOf('<body')))
    .replace(/<!--[\s\S]*?-->/gu, '')
    .replace(/<(style|script|defs)\b[\s\S]*?<\/\1>/gu, '')
    .replace(/<img\b[^>]*\salt="([^"]*)"[^>]*>/gu, '\n[picture: $1]\n')
    .replace(/\s+/gu, (space) => (space.includes('\u00A0') ? space : ' '))
    .replace(new RegExp(`</?(?!(?:${INLINE})[\\s>/])[a-z][^>]*>`, 'gu'), '\n')
    .replace(/<[^>]*>/gu, '');
  const lines = decoded(`${title}\n${body}`)
    .split('\n')
    .map((line) => line.replace(/[ \t]+/gu, ' ').trim());
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}
