/** What no message may hold, whatever the program was given. */

/** A stack trace, or a hole where a word should be. */
export const HOLE = / {4}at .*\.[jt]s:|undefined|\[object /;

/** A sign that a terminal obeys, or that turns the direction of what follows; a line break is none. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it looks for
export const OBEYED = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;
