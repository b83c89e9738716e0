/** What is piped in or typed on standard input. */

/** Up to its end, and no more than about `most` bytes: what is longer is refused by its length. */
export async function readInput(most: number): Promise<Uint8Array> {
  if (process.stdin.isTTY)
    process.stderr.write('Type or paste the text, then Ctrl+D on a line of its own.\n');
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of process.stdin) {
    pieces.push(Buffer.from(piece));
    size += pieces.at(-1)?.length ?? 0;
    if (size >= most) break;
  }
  return Buffer.concat(pieces);
}
