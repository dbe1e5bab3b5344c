import { audioEndingInText, namesAudioFileIn } from '../../../model/fileNames';

const mostLooks = 2000;
const longestLine = 2000;
const fewestZones = 2;
const fewestFields = 2;
const longestHead = 80;
const clock = String.raw`\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d{1,9})?)?`;
const date = String.raw`(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}|\p{L}{3}\.?\s{1,2}\d{1,2}(?:\s\d{4})?)`;
const level = String.raw`\[?(?:TRACE|DEBUG|INFO|NOTICE|WARN|WARNING|ERROR)\]?:?(?!\S)`;
const doing = '(?:load|import|assign|open|read|add|cach|mapp?|creat|stor|scann?|register)(?:s|e|ed|ing)?';
/** When a line of a log was written: a time, with a date or without, or seconds since the start; or how grave it is. */
const stamp = new RegExp(
  String.raw`^[ \t]*(?:\[\s*(?:${date}[T ,]{1,2})?${clock}[^\]\r\n]{0,12}\]|\[\s*\d{1,8}\.\d{3,9}\s*\]|(?:${date}[T ,]{1,2})?${clock}(?:Z|\s?[+-]\d{2}:?\d{2})?(?![\d:])|${level}|(?:${doing}|(?:zone|region|sample|entry|slot)\s?#?\d{1,5}):(?=\s))`,
  'iu',
);
/** A number in brackets before what a dump says of an entry. */
const counter = /^[ \t]*\[\s*(\d{1,5})\s*\](?=\s)/;
const field = /(?:^|[\s,;|])\p{L}[\p{L}\p{N}_.-]*=(?=\S)/gu;
/** What a program says that it does with a file, before the file's name. */
const deed = new RegExp(
  String.raw`^(?:[\s:,|>-]+|${level}|#\d{1,5}[.:)]?(?=\s)|(?:${doing}|found|(?:zone|region|sample|entry|slot|file)(?:\s#?\d{1,5})?):?(?=\s))`,
  'iu',
);
/** A name that nobody's name or other mark stands in front of. */
const plainName = /^["']?[\p{L}\p{N}_ ./\\#()+-]*$/u;
const nameEnd = new RegExp(audioEndingInText, 'iu');

/**
 * A text without what a program writes into its log before the fields of a line, or before the name of the file that they are about: time,
 * level and words such as `LOAD`; lines of the log that give no zone say nothing of zones. What is taken away becomes blanks. Any other text
 * stays.
 */
export function withoutLogHeads(text: string): string {
  if (!namesAudioFileIn(text.slice(0, 4000))) return text;
  const lines = text.slice(0, 1 << 16).split(/\r\n?|\n/, mostLooks);
  const filled = lines.filter((line) => line.trim() !== '');
  const isStamped = (line: string) => stamp.test(line) || (isCounted && counter.test(line));
  const isCounted = areCounted(filled);
  const stamped = filled.filter(isStamped);
  const zones = stamped.filter((line) => namesAudioFileIn(line) && zoneFrom(line) >= 0);
  if (zones.length < fewestZones || stamped.length * 3 < filled.length * 2) return text;
  return text.replace(/[^\r\n]+/g, (line) => {
    if (line.length > longestLine || !isStamped(line)) return line;
    const from = zoneFrom(line);
    return from < 0 ? ' '.repeat(line.length) : ' '.repeat(from) + line.slice(from);
  });
}

/** Whether lines begin with numbers in brackets that count them: others may be keys. */
function areCounted(lines: readonly string[]): boolean {
  const numbers = lines.flatMap((line) => counter.exec(line)?.[1] ?? []).map(Number);
  return numbers.length > 1 && numbers[0] <= 1 && numbers.every((number, at) => number === numbers[0] + at);
}

/** Where what a line of a log says of a zone begins; −1 where it says nothing of one, or more before it than a head does. */
function zoneFrom(line: string): number {
  const head = (stamp.exec(line) ?? counter.exec(line))?.[0].length ?? 0;
  const [first, ...more] = [...line.slice(head).matchAll(field)];
  const from = first ? head + first.index + (/^[\s,;|]/.test(first[0]) ? 1 : 0) : -1;
  const name = nameEnd.exec(line.slice(head))?.index ?? -1;
  const isNamedBefore = name >= 0 && (from < 0 || head + name < from);
  if (isNamedBefore) {
    const start = behindDeeds(line, head);
    return plainName.test(line.slice(start, head + name)) ? start : -1;
  }
  return !first || more.length + 1 < fewestFields || from - head > longestHead ? -1 : from;
}

/** Where the name of a file begins behind what a program says that it does with it; −1 where it says nothing, as before a time of day alone. */
function behindDeeds(line: string, head: number): number {
  let from = head;
  for (;;) {
    const said = deed.exec(line.slice(from, from + longestHead))?.[0];
    if (!said) break;
    from += said.length;
  }
  return from;
}
