/** A text of at most `most` characters, cut between two words; a sign tells that more stood there. */
export const cutWords = (words: string, most: number): string =>
  words.length <= most ? words : `${words.slice(0, most).replace(/\s+\S*$/u, '')} …`;
