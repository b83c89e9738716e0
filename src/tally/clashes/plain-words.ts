/** Words of a row in a hint: without the signs that mean something in YAML. */
export const plainWords = (words: string): string => words.replaceAll(/[,:{}[\]"#]/g, '').trim();
