import { audioEndingInText } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { textStart } from '../../../model/text/textLayout';

/** A paragraph with more files, or longer, is no sentence about samples (our choice). */
const mostFiles = 200;
const longestParagraph = 20_000;
/** No mail is longer. */
const longestText = 500_000;
const fileIn = new RegExp(
  String.raw`[^\s"',;:()[\]\uff0c\uff1b\uff1a\u3001\u201c\u201e\u00ab\x60]{1,120}${audioEndingInText}(?![\p{L}\p{N}])`,
  'giu',
);
/** The end of a sentence, or a semicolon. */
const strong = /[;\uff1b\u3002](?=\s|$)|[.!](?=\s)|[\uff1b\u3002]/gu;
/** A comma that is no decimal one, with a word that leads on behind it. */
const weak = /[,\uff0c\u3001](?!\d)|\s(?=(?:and|und|et|y|e|en|och|og|ja|i|a|и)\s)/giu;

/**
 * The stretches of a text whose paragraphs tell of several files, each with what is said of one: `a.wav goes on 36 to 40, b.wav on 41 to
 * 45`. What stands between two files is cut at the end of a sentence; without one, before the clause of the next file, or behind the file
 * where its keys stand before it. `undefined` where no paragraph names two.
 */
export function toldPieces(text: string): Stretch[] | undefined {
  if (text.length > longestText) return undefined;
  const pieces: Stretch[] = [];
  let isParted = false;
  for (const paragraph of paragraphsOf(text)) {
    const written = text.slice(paragraph.start, paragraph.end);
    const files = /[\t|]/.test(written) || written.length > longestParagraph ? [] : filesIn(written);
    if (files.length < 2 || files.length > mostFiles) {
      for (const line of linesIn(text, paragraph)) pieces.push(line);
      continue;
    }
    isParted = true;
    const isFileLast = /\d/.test(lastSentence(written.slice(0, files[0].start)));
    let start = headOf(written, files[0].start);
    if (start > 0) pieces.push({ start: paragraph.start, end: paragraph.start + start });
    for (const [at, file] of files.entries()) {
      const next = files[at + 1]?.start;
      const end =
        next === undefined ? tailFrom(written, file.end) : cutIn(written, file.end, next, isFileLast);
      pieces.push({ start: paragraph.start + start, end: paragraph.start + end });
      start = end;
    }
    if (start < written.length) pieces.push({ start: paragraph.start + start, end: paragraph.end });
  }
  return isParted ? pieces : undefined;
}

function filesIn(written: string): Stretch[] {
  return [...written.matchAll(fileIn)].map(({ 0: name, index }) => ({
    start: index,
    end: index + name.length,
  }));
}

function lastSentence(before: string): string {
  const ends = [...before.matchAll(strong), ...before.matchAll(/:\s/g)].map(({ index }) => index);
  return before.slice(ends.length > 0 ? Math.max(...ends) + 1 : 0);
}

/** Where the sentence of the first file begins. */
function headOf(written: string, file: number): number {
  const before = written.slice(0, file);
  return file - lastSentence(before).length;
}

/** Where the sentence of the last file ends. */
function tailFrom(written: string, from: number): number {
  const found = [...written.slice(from).matchAll(strong)].find(({ 0: sign }) => !/[;\uff1b]/.test(sign));
  return found ? from + found.index + found[0].length : written.length;
}

/** Where what is said of one file ends and what is said of the next begins. */
function cutIn(written: string, from: number, to: number, isFileLast: boolean): number {
  const between = written.slice(from, to);
  const sentences = [...between.matchAll(strong)].map(({ 0: sign, index }) => index + sign.length);
  const clauses = [...between.matchAll(weak)].map(({ 0: sign, index }) => index + sign.length);
  const places = sentences.length > 0 ? sentences : clauses;
  const place = isFileLast ? places[0] : places.at(-1);
  return from + (place ?? (isFileLast ? 0 : between.length));
}

/** Lines that follow one another, up to an empty one or one that begins a list. */
function paragraphsOf(text: string): Stretch[] {
  const found: Stretch[] = [];
  for (const line of linesIn(text, { start: textStart(text), end: text.length })) {
    const last = found.at(-1);
    const written = text.slice(line.start, line.end);
    const isOwn = written.trim() === '' || /^\s*(?:[-*\u2022]\s|\d{1,3}[.)]\s)/u.test(written);
    const isJoined = last && !isOwn && text.slice(last.start, last.end).trim() !== '';
    if (isJoined) last.end = line.end;
    else found.push({ ...line });
  }
  return found;
}

function linesIn(text: string, { start, end }: Stretch): Stretch[] {
  const lines: Stretch[] = [];
  for (let at = start; at <= end; ) {
    const feed = text.indexOf('\n', at);
    const stop = feed < 0 || feed > end ? end : feed;
    lines.push({ start: at, end: text[stop - 1] === '\r' && stop > at ? stop - 1 : stop });
    at = stop + 1;
  }
  return lines;
}
