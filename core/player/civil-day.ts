const DATE = /^\s*(\d{4})-(\d{2})-(\d{2})(?:$|[\sT])/;
const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Number of the day of a date written like 2026-05-30 (what follows a space or T is left out), for differences between days.
 * @returns null when it is no such date
 * @source days from civil in the proleptic Gregorian calendar, shifted to begin in March so that the leap day ends a year
 */
export function civilDay(date: string): number | null {
  const parts = DATE.exec(date);
  if (parts === null) return null;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1 || day > DAYS[month - 1]!) return null;
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month === 2 && day === 29 && !isLeap) return null;
  const y = month <= 2 ? year - 1 : year;
  const inYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + inYear;
}
