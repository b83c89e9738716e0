/** "Street parking by permit", "resident permit": a paper for a car, and none for work on the house. */

const FOR_A_CAR = /\b(parking|street|resident(ial|s)?|zone|curb|guest)\b[\s\w-]{0,24}$/i;
const FOR_WORK = /\b(work|built|building|pulled|final\w*|permitted)\b/i;

export const isParkingPermit = (text: string, from: number, to: number): boolean =>
  FOR_A_CAR.test(text.slice(Math.max(0, from - 36), from).replace(/.*[.,;:!?]/s, '')) &&
  !FOR_WORK.test(text.slice(Math.max(0, from - 16), to + 10));
