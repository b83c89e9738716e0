/** The few colours on paper, as RGB parts of one. All are solid: transparency is not used. */
export type InkName = 'paper' | 'ink' | 'soft' | 'line' | 'accent' | 'accent-soft' | 'wash';

export type Rgb = readonly [red: number, green: number, blue: number];

function hex(code: number): Rgb {
  return [(code >> 16) & 255, (code >> 8) & 255, code & 255].map((part) => part / 255) as unknown as Rgb;
}

const ACCENT = hex(0x1d5163);

export const INKS: Record<InkName, Rgb> = {
  paper: [1, 1, 1],
  ink: hex(0x1c2326),
  soft: hex(0x566167),
  line: hex(0xc9cfcf),
  accent: ACCENT,
  // The accent at 38 % on white paper.
  'accent-soft': ACCENT.map((part) => 1 - 0.38 * (1 - part)) as unknown as Rgb,
  wash: hex(0xeef2f2),
};
