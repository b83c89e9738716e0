import { createHash } from 'node:crypto';
import type { Packet } from './packet.js';

/** The first 48 bits of the SHA-256 of everything a packet says, in groups of four hexadecimal digits. */
export function digestOf(packet: Omit<Packet, 'digest'>): string {
  const hex = createHash('sha256').update(JSON.stringify(packet)).digest('hex').slice(0, 12);
  return hex.replace(/(.{4})(?=.)/g, '$1 ');
}
