/** The same for each of them, a few at a time: the disk and the picture library work beside each other. In the order of asking. */
export async function fewAtOnce<One, Made>(
  all: readonly One[],
  atOnce: number,
  make: (one: One) => Promise<Made>,
): Promise<Made[]> {
  const made: Made[] = [];
  const waiting = all.entries();
  const work = async (): Promise<void> => {
    // All hands take from the same list.
    for (const [index, one] of waiting) made[index] = await make(one);
  };
  await Promise.all(Array.from({ length: atOnce }, work));
  return made;
}
