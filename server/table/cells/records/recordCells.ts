import { audioEndingInText, isAudioFileName } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { textStart } from '../../../model/text/textLayout';
import { readHeading } from '../../../trade/headings/headings';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import type { TableCells } from '../cells';
import type { LiteralComment } from '../literals/literalTree';
import { chunkFields, spacedField } from './dumpedLines';
import { fieldOf, fieldsIn, labelledParts } from './recordLines';
import type { RecordLine } from './records';
import { Records } from './records';

/** So many lines tell whether a text is made of records. */
const mostLooks = 200;
/** Of these the first have to be like records already. */
const fewLooks = 12;
/** A line in square brackets, as INI and TOML part their blocks. */
const section = /^[ \t]*\[{1,2}[^\][\r\n]+\]{1,2}[ \t]*$/mu;
const mostForSection = 16_384;
/** A file in a comment: a zone that somebody took out, or did not make yet. */
const fileInComment = new RegExp(`[^\\s"'(]${audioEndingInText}`, 'iu');
/** A line that is drawn as a title: `=== Soft ===`, `[Soft]`, `## Soft`. */
const title = /^\s*(?:={2,}|#{1,6}\s|\*{2,}|-{2,}|~{2,}|\[[^\]]*\]\s*$)/u;

/**
 * The cells of a text in which each zone is a record: a block of lines such as `Root key: C3`, or a line of parts such
 * as `root=C3`. The labels make a row of headings. `undefined` for any other text.
 */
export function recordCells(text: string): TableCells | undefined {
  const comment = commentsIn(text);
  const looksSo = (read: typeof oneField, lines: number) =>
    areRecords(
      text,
      [...linesIn(text, lines)]
        .filter((line) => !isComment(text, line, comment))
        .map((line) => read(text, line)),
      lines === fewLooks,
    );
  const read = [oneField, someFields, someParts, alignedField, fieldsOfChunks].find(
    (one) => looksSo(one, fewLooks) && looksSo(one, mostLooks),
  );
  if (!read) return undefined;
  const records = new Records(text, read === someFields || read === someParts);
  const comments: LiteralComment[] = [];
  for (const line of linesIn(text, Number.POSITIVE_INFINITY)) {
    if (isComment(text, line, comment)) comments.push(commentOf(text, line));
    else records.add(read(text, line));
  }
  const cells = records.cells();
  cells.around = comments.map((one) => one.text);
  cells.remarks = comments.filter((one) => fileInComment.test(one.text));
  return cells;
}

/** Lines that a parser of such files passes over; without sections `#` may lead a title. */
function commentsIn(text: string): RegExp {
  return section.test(text.slice(0, mostForSection)) ? /^\s*(?:[;#]|\/\/)/ : /^\s*(?:;|\/\/)/;
}

function isComment(text: string, { start, end }: Stretch, comment: RegExp): boolean {
  return comment.test(text.slice(start, Math.min(end, start + 80)));
}

function commentOf(text: string, { start, end }: Stretch): LiteralComment {
  return {
    text: text
      .slice(start, end)
      .replace(/^[\s;#/]+/, '')
      .trim(),
    start,
    end,
  };
}

function* linesIn(text: string, most: number): Generator<{ start: number; end: number }> {
  let start = textStart(text);
  for (let lines = 0; start < text.length && lines < most; lines++) {
    let end = start;
    while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
    yield { start, end };
    start = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
}

function oneField(text: string, { start, end }: { start: number; end: number }): RecordLine {
  const found = fieldOf(text, start, end);
  return { start, end, fields: found ? [found] : [] };
}

function someFields(text: string, { start, end }: { start: number; end: number }): RecordLine {
  const fields = fieldsIn(text, start, end);
  return { start, end, fields: fields.length > 1 ? fields : [] };
}

function alignedField(text: string, { start, end }: { start: number; end: number }): RecordLine {
  const found = spacedField(text, start, end);
  return { start, end, fields: found ? [found] : [] };
}

function fieldsOfChunks(text: string, { start, end }: { start: number; end: number }): RecordLine {
  return { start, end, fields: chunkFields(text, start, end) };
}

function someParts(text: string, { start, end }: { start: number; end: number }): RecordLine {
  return { start, end, fields: labelledParts(text, start, end) };
}

/**
 * Whether most lines have labels and values, most labels are known headings, and samples are named beside keys or as files; the first look
 * may see one record alone.
 */
function areRecords(text: string, lines: readonly RecordLine[], isFirstLook: boolean): boolean {
  const isTitle = ({ start, end }: RecordLine) => {
    const line = text.slice(start, Math.min(end, start + 200));
    return title.test(line) || line.trim() === '';
  };
  const filled = lines.filter((line) => line.end > line.start && (line.fields.length > 0 || !isTitle(line)));
  const labelled = filled.filter(({ fields }) => fields.length > 0);
  if (labelled.length === 0 || labelled.length * 5 < filled.length * 3) return false;
  const meanings = new Map<string, ColumnMeaning | undefined>();
  const times = new Map<string, number>();
  let tabs = false;
  let files = false;
  for (const { label, sign, valueStart, valueEnd } of labelled.flatMap(({ fields }) => fields)) {
    const word = bareWord(label);
    if (!meanings.has(word)) meanings.set(word, readHeading(label)?.meaning);
    times.set(word, (times.get(word) ?? 0) + 1);
    tabs ||= sign === '\t';
    files ||= isAudioFileName(text.slice(valueStart, valueEnd).replace(/^["']|["']$/g, ''));
  }
  const known = new Set([...meanings.values()].filter((meaning) => meaning !== undefined));
  const knownLabels = [...meanings.values()].filter((meaning) => meaning !== undefined).length;
  const unlabelled = files && meanings.has('');
  if (known.size < 2 || knownLabels * 2 < meanings.size) return false;
  if (!known.has('sample') && !unlabelled) return false;
  const records = Math.max(...times.values());
  // Two columns parted by a tab are a table of their own unless their labels recur.
  if (records < 2) return !tabs && (files || isFirstLook) && known.size > 2;
  return files || keyMeanings.some((meaning) => known.has(meaning));
}
