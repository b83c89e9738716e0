/** Whole months from `day` to `later`, both YYYY-MM-DD; negative where `day` is after it. */
export function monthsBefore(later: string, day: string): number {
  const [year = 0, month = 0, date = 0] = later.split('-').map(Number);
  const [from = 0, fromMonth = 0, fromDate = 0] = day.split('-').map(Number);
  return (year - from) * 12 + month - fromMonth - (date < fromDate ? 1 : 0);
}
