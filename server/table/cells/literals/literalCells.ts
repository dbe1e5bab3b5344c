import { audioEndingInText } from '../../../model/fileNames';
import { TableCells } from '../cells';
import { leaveOutCutRow } from '../cutEnd';
import { areHeadings, listsIn, valuesIn } from './commentedHeadings';
import { partCutRecords } from './cutRecords';
import type { DeclaredType } from './declaredTypes';
import { declaredTypes } from './declaredTypes';
import { namedTexts } from './joinedTexts';
import type { LiteralField } from './literalField';
import type { LiteralRecord } from './literalRecords';
import { literalRecords } from './literalRecords';
import type { LiteralComment } from './literalTree';
import { readLiterals } from './literalTree';
import { useLookUps } from './lookUps';
import { flatHeadings, underHeadings } from './nestedHeadings';
import { proseAround } from './proseAround';
import { constantsOf } from './sourceConstants';
import { dumpRecords } from './sqlRecords';
import { listsColumns, unendedRecords } from './unendedRecords';
import { readIndented } from './yamlTree';

/** So much of a text tells whether it may be a literal. */
const looked = 4096;
const mostColumns = 200;
/** Types are declared so far from the start of a text. */
const longestTypes = 1 << 16;
/** An opening bracket, at the start or behind a name and a sign, or a function that is called. */
const opening =
  /^\s*(?:(?:(?:const|let|var|local|return|export|default|new|final|static|public|val|my|our)\s+)*(?:[\p{L}_]\w*\s+){0,3}[\p{L}_$@][\p{L}\p{N}_.$]*(?:\[\w*\]){0,2}\s*(?:(?::[^=\n]{0,60})?:?=|<-)\s*(?:[\p{L}_]\w*!?\s*)?)?[[{(]|^\s*(?:return\s+)?[\p{L}_][\p{L}\p{N}_.]*\s?[({]\s*(?:[frb]?["'`]|[{[]|[\p{L}_]\w*\s*[=:]|\$?[\p{L}_]\w*\s*(?:\.\.|[.+&~/])\s*["'`])/u;
const bracketLine =
  /^[ \t]*(?:(?:[\p{L}_$][^\n]{0,60}[:=(]\s*)?[[{(]|[\p{L}_][\p{L}\p{N}_.]{0,40}\s?[({]\s*(?:\$?[\p{L}_]\w*\s*(?:\.\.|[.+&~/])\s*|[frb]?)["'`])/mu;
const comment = /^\s*(?:(?:\/\/|#|--)[^\n]*\n|\/\*[\s\S]*?\*\/)/;
/** A name that is given one text or number, as a folder, before the literal. */
const setting =
  /^\s*(?:(?:export|const|let|var|local|final|static|public|my|our|def|val)\s+)*[$@]?[\p{L}_][\p{L}\p{N}_.]*\s*(?::\s*\w+\s*)?=\s*(?:[rbu]?"[^"\n]*"|[rbu]?'[^'\n]*'|`[^`\n]*`|-?[\d.]+|true|false|nil|null|None|undefined|\{\}|\[\])[ \t]*;?[ \t]*(?:(?:\/\/|#|--)[^\n]*)?\r?\n/u;
const marker = /^\s*<\?php\b[^\n]*\n/;
/** A line that only brings in other texts, or names the one that it stands in. */
const bringing = /^\s*(?:import|from|require|use|using|package|module|namespace|include)\b[^\n]*\n/u;
const file = new RegExp(`["'\`][^"'\`\n]{1,300}${audioEndingInText}["'\`]`, 'iu');

/** Whether a text starts as JSON or a literal of a script does, and names a file or has keys in quotation marks. */
export function mayBeLiteral(text: string): boolean {
  const start = withoutComments(text);
  if (hasBlocks(start)) return false;
  return opening.test(start) && (file.test(text) || /["']\s*:/.test(start) || listsColumns(text));
}

/** Whether a text names a file in quotation marks, and a bracket opens a line in it, or behind a name and a sign. */
function mayHoldLiteral(text: string): boolean {
  const start = text.slice(0, looked * 2);
  return file.test(start) && bracketLine.test(start) && !hasBlocks(start);
}

/** Whether a text is in blocks below names in square brackets, with a value on each line, as TOML and INI have it. */
function hasBlocks(text: string): boolean {
  const blocks = text.match(/^[ \t]*\[{1,2}[\p{L}_][\p{L}\p{N} _."-]*\]{1,2}[ \t]*$/gmu)?.length ?? 0;
  return blocks > 0 && /^[ \t]*[\p{L}_][\p{L}\p{N} _.-]*[ \t]*=[ \t]*\S/mu.test(text);
}

/** The start of a text behind the comments and settings that it starts with. */
function withoutComments(text: string): string {
  let start = text.slice(0, looked).replace(/^\ufeff/, '');
  const leadOf = () =>
    comment.exec(start) ?? setting.exec(start) ?? marker.exec(start) ?? bringing.exec(start);
  for (let lead = leadOf(); lead; lead = leadOf()) start = start.slice(lead[0].length);
  return start;
}

/**
 * The cells of JSON, JSON lines, a literal of a script or an indented list, a row for each map or list that names a sample, with a row of headings
 * where values have keys. Comments, sentences before and behind it, and what belongs to all, are kept as texts around. `undefined` for any other text.
 */
export function literalCells(text: string): TableCells | undefined {
  const dump = dumpRecords(text);
  if (dump) {
    const cells = new LiteralTable(text).cells(dump.records);
    cells.areRecords = true;
    cells.assumptions = dump.joined;
    return cells;
  }
  const prose = mayHoldLiteral(text)
    ? proseAround(
        text,
        (line) => opening.test(line),
        (line) => setting.test(`${line}\n`),
      )
    : undefined;
  const body = prose?.body ?? text;
  const constants = mayBeLiteral(body) ? body : constantsOf(text);
  const read = constants === undefined ? readIndented(text) : readLiterals(constants, namedTexts(text));
  if (!read) return undefined;
  const { top, comments } = read;
  const found = literalRecords(top);
  const unended = found.records.length === 0 ? unendedRecords(text, top, comments) : undefined;
  const { around, shared } = found;
  const records = unended?.records ?? found.records;
  // One call of a function may do anything.
  if (records.length === 0 || (records.length === 1 && !/^\s*[[{]/.test(withoutComments(constants ?? body))))
    return undefined;
  const types = declaredTypes(text.slice(0, longestTypes));
  nameByType(records, types);
  nameByComment(records, comments);
  useLookUps(top, records);
  const { whole, cut, cutEnd } = partCutRecords(text, records, read.open);
  const cells = new LiteralTable(text).cells([...whole, ...cut]);
  cells.rowCount -= cut.length;
  cells.cutEnd = cutEnd ?? (constants === undefined ? leaveOutCutRow(cells) : undefined);
  cells.areRecords = true;
  cells.around = [
    ...(prose?.sentences ?? []),
    ...comments.map(({ text: one }) => one),
    ...around,
    ...types.flatMap(({ sentences }) => sentences),
  ];
  const handedOn = shared.map(({ name, map: { entries, start, end } }) => ({
    text: `"${name}" is taken for all zones that give no such values of their own: ${entries.map(({ key }) => key.text).join(', ')}.`,
    start,
    end,
  }));
  cells.assumptions = [...cells.assumptions, ...(unended?.told ? [unended.told] : []), ...handedOn];
  cells.remarks = comments.flatMap((one) => (leftOut.test(one.text) ? [one] : []));
  return cells;
}

/** A comment that names an audio file: a zone that somebody took out, or did not make yet. */
const leftOut = new RegExp(`[^\\s"'(]${audioEndingInText}`, 'iu');

/** Gives values that stand by their places alone the names of the fields of a type that the text declares. */
function nameByType(records: readonly LiteralRecord[], types: readonly DeclaredType[]): void {
  if (types.length === 0) return;
  const placed = records.map(({ fields }) => fields.filter(({ heading }) => heading === ''));
  const places = Math.max(...placed.map(({ length }) => length));
  // Fields at the end may be left out of constants.
  const type = types.find(
    ({ headings }) => headings.length >= places && areHeadings(headings.slice(0, places), places),
  );
  if (!type) return;
  for (const fields of placed) for (const [at, field] of fields.entries()) field.heading = type.headings[at];
}

/**
 * Gives values that stand by their places alone the headings that a comment lists, nested as they are: `(path, low, high, root)`,
 * `(path, root, (low, high))`.
 */
function nameByComment(records: readonly LiteralRecord[], comments: readonly LiteralComment[]): void {
  // What goes for all zones is handed on to each under its own heading.
  const placed = records.map(({ fields }) => fields.filter(({ heading, key }) => heading === '' && !key));
  const places = placed.reduce((most, { length }) => Math.max(most, length), 0);
  if (records.some(({ fields }, at) => fields.length > 0 && placed[at].length < 2)) return;
  const most = placed.reduce((sum, fields) => Math.max(sum, valuesIn(fields)), 0);
  for (const { text } of comments) {
    const found = listsIn(text).find((names) => {
      const flat = flatHeadings(names);
      if (names.length !== places && flat.length !== most) return false;
      return areHeadings(flat, flat.length) && placed.every((fields) => underHeadings(fields, names, places));
    });
    if (!found) continue;
    for (const [at, record] of records.entries()) {
      const named = underHeadings(placed[at], found, places) ?? [];
      const own = new Set(placed[at]);
      record.fields = [...named, ...record.fields.filter((field) => !own.has(field))];
    }
    return;
  }
}

/** A column: a heading, or the place of values without one. */
interface Column {
  heading: string;
  first: LiteralField;
}

class LiteralTable {
  readonly #cells: TableCells;
  readonly #spans: { start: number; end: number }[] = [];

  constructor(readonly text: string) {
    this.#cells = new TableCells(text);
  }

  cells(records: readonly LiteralRecord[]): TableCells {
    const columns = new Map<string, Column>();
    const names = records.map(({ fields }) => {
      let place = 0;
      return fields.map((field) => {
        const name = field.heading === '' ? ` ${place++}` : field.heading.toLowerCase();
        if (!columns.has(name) && columns.size < mostColumns)
          columns.set(name, { heading: field.heading, first: field });
        return name;
      });
    });
    const hasHeadings = [...columns.values()].some(({ heading }) => heading !== '');
    if (hasHeadings) this.#addHeadings([...columns.values()]);
    for (const [at, { fields, start, end }] of records.entries()) {
      for (const name of columns.keys()) {
        const field = fields[names[at].indexOf(name)];
        if (field) this.#add(field.text, field.start, field.end);
        else this.#cells.put(start, start);
      }
      this.#cells.endRow();
      this.#spans.push({ start, end });
    }
    this.#cells.rowSpans = this.#spans;
    return this.#cells;
  }

  #addHeadings(columns: readonly Column[]): void {
    for (const { heading, first } of columns) {
      const { key, start } = first;
      if (key) this.#add(heading, key.start, key.end);
      else if (heading === '') this.#cells.put(start, start);
      else this.#add(heading, start, start);
    }
    this.#cells.endRow();
    const start = columns[0]?.first.key?.start ?? 0;
    this.#spans.push({ start, end: start });
  }

  #add(text: string, start: number, end: number): void {
    const cell = this.#cells.put(start, text === '' ? start : Math.max(start + 1, end));
    if (text !== '' && this.text.slice(start, end) !== text) this.#cells.rewritten.set(cell, text);
  }
}
