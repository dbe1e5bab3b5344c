import { bareWord } from '../languages/spelling';

/** Two numbers of which a spreadsheet made a date. */
export interface DatedPair {
  low: number;
  high: number;
}

const longest = 30;
/** Languages that spreadsheets name months in. */
const locales = 'en de fr es it pt ja nl sv da nb fi pl cs ru zh ko tr hu el'.split(' ');
const worded =
  /^(?:(\d{1,2})[.\u00ba\u00aa]?[-\s/.]{0,2}(\p{L}{3,12})\.?(?:[-\s/,.]{1,2}(\d{4}))?|(\p{L}{3,12})\.?[-\s/,.]{0,2}(\d{1,2})(?:,?[-\s/](\d{4}))?)$/u;
const numbered =
  /^(?:(\d{4})([-/.])(\d{1,2})\2(\d{1,2})|(\d{1,2})([-/.])(\d{1,2})\6(\d{4}))\.?(?:[ T]0?0:00(?::00)?(?:\.0+)?)?$/;
const ideographic = /^(\d{1,2})[\u6708\uc6d4]\s?(\d{1,2})[\u65e5\uc77c]$/u;

let months: ReadonlyMap<string, number> | undefined;

/** The number of a month by its name, long or short, in any of the languages; 0 where it names none, or different ones. */
function monthOf(word: string): number {
  months ??= monthNames();
  return months.get(bareWord(word)) ?? 0;
}

function monthNames(): Map<string, number> {
  const found = new Map<string, number>();
  const add = (name: string, month: number) => {
    const bare = bareWord(name).replace(/\.$/, '');
    if (bare.length >= 3 && /^\p{L}+$/u.test(bare))
      found.set(bare, (found.get(bare) ?? month) === month ? month : 0);
  };
  for (const locale of locales)
    for (let month = 1; month <= 12; month++) {
      const date = new Date(Date.UTC(2001, month - 1, 15));
      for (const length of ['short', 'long'] as const)
        add(new Intl.DateTimeFormat(locale, { month: length, timeZone: 'UTC' }).format(date), month);
    }
  add('mrz', 3);
  return found;
}

/**
 * The two numbers that were typed where a spreadsheet shows a date: `31-Jan` and `2025-01-31` for 1–31, `Jan-45`, which it took for a
 * month of 1945, for 1–45. `undefined` for anything else. What was typed first does not show, so the lower one comes first.
 */
export function pairInDate(text: string): DatedPair | undefined {
  const date = text.trim();
  if (date.length > longest || !/\d/.test(date)) return undefined;
  const [, day, word = '', , otherWord = '', other] = worded.exec(date) ?? [];
  const number = day ?? other;
  if (number !== undefined) return ordered(monthOf(word || otherWord), Number(number));
  const [, first, second] = ideographic.exec(date) ?? [];
  if (first !== undefined) return ordered(Number(first), Number(second));
  const parts = numbered.exec(date);
  if (!parts) return undefined;
  const year = Number(parts[1] ?? parts[8]);
  const [one, two] = [Number(parts[3] ?? parts[5]), Number(parts[4] ?? parts[7])];
  // Of two figures 30 and more are taken for a year of the last century, and the day is then the first.
  if (year >= 1930 && year < 2000)
    return one === 1 || two === 1
      ? ordered(Math.max(one, two) > 12 ? 0 : Math.max(one, two), year - 1900)
      : undefined;
  return year >= 2000 && year < 2100 && Math.min(one, two) <= 12 && Math.max(one, two) <= 31
    ? ordered(Math.min(one, two), Math.max(one, two))
    : undefined;
}

function ordered(month: number, number: number): DatedPair | undefined {
  if (month < 1 || number < 1 || month === number) return undefined;
  return { low: Math.min(month, number), high: Math.max(month, number) };
}
