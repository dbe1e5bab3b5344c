import { namesAudioFileIn } from '../../../model/fileNames';

const mostLooks = 2000;
const longestLine = 2000;
const fewestZones = 2;
const fewestFields = 2;
const longestHead = 80;
const clock = String.raw`\d{1,2}:\d{2}:\d{2}(?:[.,]\d{1,9})?`;
const date = String.raw`(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}|\p{L}{3}\.?\s{1,2}\d{1,2}(?:\s\d{4})?)`;
/** When a line of a log was written: a time, with a date or without, or seconds since the start. */
const stamp = new RegExp(
  String.raw`^[ \t]*(?:\[\s*(?:${date}[T ,]{1,2})?${clock}[^\]\r\n]{0,12}\]|\[\s*\d{1,8}\.\d{3,9}\s*\]|(?:${date}[T ,]{1,2})?${clock}(?:Z|\s?[+-]\d{2}:?\d{2})?(?!\d))`,
  'u',
);
const field = /(?:^|[\s,;|])\p{L}[\p{L}\p{N}_.-]*=(?=\S)/gu;

/**
 * A text without what a program writes into its log before the fields of a line: time, level and words such as `LOAD`; lines of the log that
 * give no fields say nothing of zones. What is taken away becomes blanks. Any other text stays.
 */
export function withoutLogHeads(text: string): string {
  if (!text.includes('=') || !/\d:\d{2}:\d{2}|^\[\s*\d+\.\d{3}/m.test(text.slice(0, 4000))) return text;
  const lines = text.slice(0, 1 << 16).split(/\r\n?|\n/, mostLooks);
  const filled = lines.filter((line) => line.trim() !== '');
  const stamped = filled.filter((line) => stamp.test(line));
  const zones = stamped.filter((line) => namesAudioFileIn(line) && fieldsFrom(line) >= 0);
  if (zones.length < fewestZones || stamped.length * 5 < filled.length * 4) return text;
  return text.replace(/[^\r\n]+/g, (line) => {
    if (line.length > longestLine || !stamp.test(line)) return line;
    const from = fieldsFrom(line);
    return from < 0 ? ' '.repeat(line.length) : ' '.repeat(from) + line.slice(from);
  });
}

/** Where the fields of a line of a log begin; −1 where it gives too few, or says more before them than a head does. */
function fieldsFrom(line: string): number {
  const head = stamp.exec(line)?.[0].length ?? 0;
  const fields = [...line.slice(head).matchAll(field)];
  const [first] = fields;
  if (!first || fields.length < fewestFields) return -1;
  const from = head + first.index + (/^[\s,;|]/.test(first[0]) ? 1 : 0);
  return from - head > longestHead || namesAudioFileIn(line.slice(head, from)) ? -1 : from;
}
