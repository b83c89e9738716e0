/** Yes, no or not known, and how several of them make one: what isn’t known never turns into a no by itself. */
export type Truth = 'yes' | 'no' | 'not known';

/** One no decides; else one that isn’t known leaves it open. */
export function allOf(truths: readonly Truth[]): Truth {
  if (truths.includes('no')) return 'no';
  return truths.includes('not known') ? 'not known' : 'yes';
}

/** One yes decides; else one that isn’t known leaves it open. */
export function anyOf(truths: readonly Truth[]): Truth {
  if (truths.includes('yes')) return 'yes';
  return truths.includes('not known') ? 'not known' : 'no';
}

export const notOf = (truth: Truth): Truth => (truth === 'yes' ? 'no' : truth === 'no' ? 'yes' : truth);
