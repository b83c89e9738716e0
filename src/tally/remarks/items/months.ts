const read = new Map<string, readonly number[]>();
const MOST_KEPT = 4000;

/** A house has few days, and asks for them with every phrase. */
function partsOf(day: string): readonly number[] {
  let parts = read.get(day);
  if (parts === undefined) {
    parts = day.split('-').map(Number);
    if (read.size >= MOST_KEPT) read.clear();
    read.set(day, parts);
  }
  return parts;
}

/** Whole months from `day` to `later`, both YYYY-MM-DD; negative where `day` is after it. */
export function monthsBefore(later: string, day: string): number {
  const [year = 0, month = 0, date = 0] = partsOf(later);
  const [from = 0, fromMonth = 0, fromDate = 0] = partsOf(day);
  return (year - from) * 12 + month - fromMonth - (date < fromDate ? 1 : 0);
}
