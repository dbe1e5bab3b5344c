import { namesAudioFileIn } from '../../../model/fileNames';

/** Signs that look like a bar, which some programs and keyboards write in its place. */
const otherBars = [
  '\u00a6',
  '\u2016',
  '\u2223',
  '\u2225',
  '\u2758',
  '\u2759',
  '\u23d0',
  '\uff5c',
  '\uffe4',
] as const;
const mostLooks = 300;
const longestLine = 1000;
/** So many signs part a file from two values at least. */
const fewest = 2;

/**
 * A text whose lines with files are parted by a sign that looks like a bar, as `a.wav ¦ 36 ¦ 40`, with bars in its place and at the same
 * offsets. Any other text stays as it is: one whose lines with files do not all have as many of the sign, or have bars too.
 */
export function withOtherBars(text: string): string {
  const signs = otherBars.filter((sign) => text.includes(sign));
  if (signs.length === 0) return text;
  const files = text
    .split(/[\r\n]+/, mostLooks)
    .filter((line) => line.length <= longestLine && namesAudioFileIn(line));
  if (files.length < 2 || files.some((line) => /[|\t]/.test(line))) return text;
  const parting = signs.find((sign) => {
    const counts = new Set(files.map((line) => line.split(sign).length - 1));
    const [count = 0] = counts;
    return counts.size === 1 && count >= fewest;
  });
  return parting === undefined ? text : text.replaceAll(parting, '|');
}
