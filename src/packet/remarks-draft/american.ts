/** Words of the folder in the spelling of American listing texts. Only spelling changes, never a word. */

const SPELT: readonly (readonly [RegExp, string])[] = [
  [/\bstoreys\b/gi, 'stories'],
  [/\bstorey\b/gi, 'story'],
  [/aluminium/gi, 'aluminum'],
  [/\bcolour/gi, 'color'],
  [/\bgrey\b/gi, 'gray'],
  [/\bcentre\b/gi, 'center'],
  [/\bmoulding/gi, 'molding'],
  [/\bdraught/gi, 'draft'],
  [/\bkerb\b/gi, 'curb'],
];

/** "windows (half storey)" as "windows (half story)". */
export const inAmerican = (text: string): string =>
  SPELT.reduce(
    (words, [pattern, spelt]) =>
      words.replace(pattern, (found) =>
        found.charAt(0) === found.charAt(0).toUpperCase()
          ? spelt.charAt(0).toUpperCase() + spelt.slice(1)
          : spelt,
      ),
    text,
  );
