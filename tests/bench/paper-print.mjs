/**
 * The PDF of one edition and nothing else, in a process of its own: read, worked out, composed, printed, written.
 *
 *   node tests/bench/paper-print.mjs BASE HOUSE EDITION OUT.pdf
 */
import { writeFileSync } from 'node:fs';
import { renderPdf } from '../../dist/build.js';
import { composed, orderFor } from './demo-houses.mjs';

const [, , base = '', house = '', edition = '', out = ''] = process.argv;
const name = /** @type {import('../../dist/packet/packet.js').EditionName} */ (edition);
const { packets, picturesOf } = await composed(orderFor(base, house, [name]));
const packet = packets[0];
if (packet === undefined) throw new Error(`no edition ${edition}`);
writeFileSync(out, (await renderPdf(packet, picturesOf(packet), 'letter')).bytes);
