/** Words that nobody else has, each with where it was planted. */

/** Whom a planted word may reach: nobody at all, or the owner, in the house file. */
export type Reach = 'nobody' | 'owner';

export interface PlantedWord {
  readonly text: string;
  readonly where: string;
  readonly reach: Reach;
}

export class PlantedWords {
  readonly all: PlantedWord[] = [];

  /** A word of letters alone, so that it may stand in a name, a tag and a text; the same place has the same word. */
  plant(where: string, reach: Reach): string {
    const known = this.all.find((one) => one.where === where);
    if (known !== undefined) return known.text;
    const text = `qzcanary${lettersOf(this.all.length)}xj`;
    this.all.push({ text, where, reach });
    return text;
  }

  /** What is planted with these is for nobody, and is named after what holds it. */
  readonly in =
    (holder: string) =>
    (where: string): string =>
      this.plant(`${holder}: ${where}`, 'nobody');

  /** Texts that may reach nobody, or the owner and nobody else. */
  texts(...reach: readonly Reach[]): string[] {
    return this.all.filter((one) => reach.includes(one.reach)).map(({ text }) => text);
  }

  whereOf(text: string): string {
    return this.all.find((one) => one.text === text)?.where ?? text;
  }
}

const lettersOf = (n: number): string =>
  [...String(n).padStart(3, '0')].map((digit) => 'bdfhkmprtv'[Number(digit)]).join('');
