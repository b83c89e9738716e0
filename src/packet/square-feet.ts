/** "1,436": digits grouped in threes. */
export function groupedNumber(n: number): string {
  return String(Math.trunc(n)).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}
