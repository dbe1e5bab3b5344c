import { audioEndingInText, isAudioFileName, namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { textStart } from '../../../model/text/textLayout';
import { TableCells } from '../cells';
import { bullet, isKey, keyFirst, keyLast } from './listedKey';
import { rootInBrackets } from './rootInBrackets';
import type { TextLine } from './toldLine';
import { toldTable } from './toldLines';
import type { ListLine } from './valuedLine';
import { valuedLine } from './valuedLine';

/** So many lines tell whether a text is a list. */
const mostLooks = 300;
const longestLine = 400;
/** A remark behind the name of a file: in brackets, behind a sign, or further away than the words of a name. */
const remarked =
  /^(.*?\.\w{2,5})((?:[ \u00a0]{2,}|[ \u00a0]*[([{]|[ \u00a0]+(?:--|[\u2013\u2014#;]|<-|\/\/)).*)$/u;
/** What stands so far apart is a cell of its own. */
const apart = /[ \u00a0]{2}/;

/**
 * The cells of a bare list that gives a key to each file, and nothing else but remarks: `36 Kick.wav`, `C1 - Kick.wav`, `Kick.wav = 36`,
 * `40 Snare.wav (loud)`, and values that say what they are by their units: `49 Crash.wav  -3 dB`.
 * `undefined` for any other text, and for lines that are only numbered.
 */
export function bareListCells(written: string): TableCells | undefined {
  const text = withoutQuotes(written);
  const looked = linesOf(text, mostLooks).filter(({ start, end }) => text.slice(start, end).trim() !== '');
  const files = looked.filter((line) => holdsFile(text, line));
  const parsed = files.map((line) => partsOf(text, line));
  const found = parsed.filter((one) => one !== undefined);
  if (found.length < 2 || found.length < files.length || files.length * 2 < looked.length) return undefined;
  if (areNumbered(text, found) || found.every(({ name }) => leadsWithNumber(text, name))) return undefined;
  const all = linesOf(text, Number.POSITIVE_INFINITY);
  const isRemark = (line: Stretch) =>
    isTakenOut(text, line) && namesAudioFileIn(text.slice(line.start, line.end));
  const lines = all.filter((line) => !isRemark(line));
  const remarks = all.filter(isRemark).map((line) => ({ ...line, text: text.slice(line.start, line.end) }));
  const isTitled = haveTitles(found.map(({ name }) => text.slice(name.start, name.end)));
  const isValued = found.some(({ values }) => values.length > 0);
  const cells = isValued
    ? toldTable(
        text,
        lines.map((line) => toldOf(text, line, isTitled)),
      )
    : listCells(text, lines, found[0].isKeyFirst, isTitled);
  cells.remarks = [...cells.remarks, ...remarks];
  return cells;
}

const quoted = new RegExp(String.raw`(["'])([^"'\r\n]{1,200}${audioEndingInText})\1`, 'giu');

/** A text whose file names stand in no quotation marks, at the same offsets. */
function withoutQuotes(text: string): string {
  return /\.\w{2,5}["']/.test(text) ? text.replace(quoted, ' $2 ') : text;
}

/** The lines as rows of a key, a name and a remark, in the order that the list has them. */
function listCells(
  text: string,
  lines: readonly Stretch[],
  isKeyFirst: boolean,
  isTitled: boolean,
): TableCells {
  const heading = headingAbove(text, lines);
  const cells = new TableCells(text);
  for (const line of lines) {
    const parts = holdsFile(text, line) ? partsOf(text, line, isTitled) : undefined;
    if (parts?.isKeyFirst === isKeyFirst) {
      const { key, name, remark } = parts;
      for (const part of isKeyFirst ? [key, name, remark] : [name, key, remark])
        if (part) cells.add(part.start, part.end);
    } else if (line === heading?.line) for (const { start, end } of heading.parts) cells.add(start, end);
    else if (line.end > line.start) cells.add(line.start, line.end);
    cells.endRow();
  }
  return cells;
}

/** What a line of a list tells, as a line of words does. */
function toldOf(text: string, line: Stretch, isTitled: boolean): TextLine {
  const parts = holdsFile(text, line) ? partsOf(text, line, isTitled) : undefined;
  if (!parts) return { ...line, told: undefined };
  const { key, name, values, remark } = parts;
  const lead = { ...key, text: text.slice(key.start, key.end), sign: '' };
  return { ...line, told: { lead, file: name, values, rest: remark ? [remark] : [] } };
}

/** The line above the first file where it has two words over the two columns, far apart as cells are. */
function headingAbove(
  text: string,
  lines: readonly Stretch[],
): { line: Stretch; parts: Stretch[] } | undefined {
  const first = lines.findIndex((line) => holdsFile(text, line));
  const line = lines
    .slice(0, first)
    .findLast(({ start, end }) => /[\p{L}\p{N}]/u.test(text.slice(start, end)));
  if (!line) return undefined;
  const written = text.slice(line.start, line.end);
  const [, name = '', between = '', other = ''] =
    /^\s*(\S.*?)([ \u00a0]{2,})(\S.*?)\s*$/u.exec(written) ?? [];
  if (name === '' || apart.test(other)) return undefined;
  const start = line.start + written.indexOf(name);
  const second = start + name.length + between.length;
  return {
    line,
    parts: [
      { start, end: start + name.length },
      { start: second, end: second + other.length },
    ],
  };
}

/** Whether a name starts with a number that stands apart: a value more than the key. */
function leadsWithNumber(text: string, { start, end }: Stretch): boolean {
  return /^-?\d[\d.]*[ \u00a0,;]/.test(text.slice(start, end));
}

/** Whether the numbers count the lines, from 0 or 1. */
function areNumbered(text: string, lines: readonly ListLine[]): boolean {
  return lines.every(({ key: { start, end } }, at) => {
    const first = Number(text.slice(lines[0].key.start, lines[0].key.end));
    return (first === 0 || first === 1) && Number(text.slice(start, end)) === first + at;
  });
}

/** The first lines of a text: not all of what may be no list at all. */
function linesOf(text: string, most: number): Stretch[] {
  const lines: Stretch[] = [];
  let start = textStart(text);
  while (start < text.length && lines.length < most) {
    let end = start;
    while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
    lines.push({ start, end });
    start = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
  return lines;
}

/** Lines that somebody took out, by the sign of a comment before them. */
const takenOut = /^[ \t]*(?:#|\/\/|--)[ \t]/;

function isTakenOut(text: string, { start, end }: Stretch): boolean {
  return takenOut.test(text.slice(start, Math.min(end, start + longestLine)));
}

function holdsFile(text: string, { start, end }: Stretch): boolean {
  if (end - start > longestLine || isTakenOut(text, { start, end })) return false;
  return namesAudioFileIn(text.slice(start, end));
}

/** What a sound is called, and the file of it: `Rain barrel - yard/barrel.wav`. */
const titled = /^([^/\\_]*[^/\\_\s])[ \u00a0]+(?:[-\u2013\u2014]|->)[ \u00a0]+(\S.*)$/u;

/**
 * Whether names of files all have a title before them: where all have the same words there, these are part of the names, and so may be words
 * before names that are no paths and have no signs of file names.
 */
function haveTitles(names: readonly string[]): boolean {
  const parted = names.map((name) => titled.exec(name));
  const titles = new Set(parted.map((one) => one?.[1]));
  const files = parted.filter((one) => one && /[/\\_]/.test(one[2]));
  return !titles.has(undefined) && titles.size === names.length && files.length * 2 > names.length;
}

/** The parts of a line; a root in brackets behind its range is one of its values, and a title before its file a remark. */
function partsOf(text: string, { start, end }: Stretch, isTitled = false): ListLine | undefined {
  const line = text.slice(start, end).trimEnd();
  const rooted = rootInBrackets(line, start);
  const whole = partsIn(text, start, rooted?.line ?? line);
  const parts = whole && isTitled ? withoutTitle(text, whole) : whole;
  if (!rooted || !parts) return parts;
  const { root } = rooted;
  const { remark } = parts;
  // The root is no part of the remark behind it.
  const isBehind = remark && remark.start < root.end && root.end < remark.end;
  return {
    ...parts,
    values: [root, ...parts.values],
    remark: isBehind ? { start: root.end, end: remark.end } : remark,
  };
}

function withoutTitle(text: string, line: ListLine): ListLine {
  const { name, remark } = line;
  const [, title, file] = titled.exec(text.slice(name.start, name.end)) ?? [];
  if (title === undefined || file === undefined) return line;
  return {
    ...line,
    name: { start: name.end - file.length, end: name.end },
    remark: remark ?? { start: name.start, end: name.start + title.length },
  };
}

function partsIn(text: string, start: number, whole: string): ListLine | undefined {
  // Other signs part the columns of a table.
  if (/[\t;|]/.test(whole.replace(/;.*$/, (rest) => (isAudioFileName(rest) ? rest : '')))) return undefined;
  const valued = valuedLine(text, start, whole);
  if (valued) return valued;
  const [, named, behind] = remarked.exec(whole) ?? [];
  // What follows another file is no remark.
  const isRemarked = named !== undefined && isAudioFileName(named) && !holdsKeyOrFile(behind);
  const line = isRemarked ? named : whole;
  const remark = isRemarked ? { start: start + line.length, end: start + whole.length } : undefined;
  const lead = bullet.exec(line)?.[0].length ?? 0;
  const rest = line.slice(lead);
  const from = start + lead;
  const first = keyFirst.exec(rest);
  if (first && isAudioFileName(first[3]) && !apart.test(first[3]) && isKey(first[1] + (first[2] ?? ''))) {
    const at = rest.indexOf(first[1]);
    const name = rest.length - first[3].length;
    return {
      key: { start: from + at, end: from + at + first[1].length + (first[2]?.length ?? 0) },
      name: { start: from + name, end: from + rest.length },
      remark,
      values: [],
      isKeyFirst: true,
    };
  }
  const behindAll = /[ \u00a0]+(?:#|\/\/|--)[ \u00a0].*$/u.exec(rest);
  const last = remark ? null : keyLast.exec(rest.slice(0, behindAll?.index));
  if (!last || !isAudioFileName(last[1]) || apart.test(last[1]) || !isKey(last[2] + (last[3] ?? '')))
    return undefined;
  const at = last[1].length + rest.slice(last[1].length).indexOf(last[2] + (last[3] ?? ''));
  return {
    key: { start: from + at, end: from + at + last[2].length + (last[3]?.length ?? 0) },
    name: { start: from, end: from + last[1].length },
    remark: behindAll ? { start: from + behindAll.index, end: from + rest.length } : undefined,
    values: [],
    isKeyFirst: false,
  };
}

/** Whether what stands behind a name starts with a value, or names another file: then it is no remark. */
function holdsKeyOrFile(text = ''): boolean {
  const bare = text.replace(/^[ \u00a0([{\u2013\u2014#;/<-]+/u, '');
  // What stands behind the sign of a comment is one, whatever numbers it holds.
  if (/^[ \u00a0]*\/\//.test(text)) return namesAudioFileIn(bare);
  return isKey(/^[^\s)\]]*/.exec(bare)?.[0] ?? '') || /^-?\d/.test(bare) || namesAudioFileIn(bare);
}
