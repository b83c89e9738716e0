/** A text as a part of a regular expression that means its letters and nothing else. */
export const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
