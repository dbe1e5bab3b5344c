import { isAudioFileName } from '../../../model/fileNames';
import type { LiteralField } from './literalField';
import type { LiteralRecord } from './literalRecords';

const mostRows = 100_000;
const longestColumns = 8000;
const name = '[`"[]?[\\p{L}_][\\p{L}\\p{N}_.]{0,80}[`"\\]]?';
const create = new RegExp(
  String.raw`\bcreate\s+(?:temp(?:orary)?\s+)?table\s+(?:if\s+not\s+exists\s+)?(${name})\s*\(`,
  'giu',
);
const insert = new RegExp(
  String.raw`\b(?:insert\s+(?:or\s+\w+\s+|ignore\s+)?into|replace\s+into)\s+(${name})\s*(?:\(([^()]{1,4000})\)\s*)?values\s*(?=\()`,
  'giu',
);
/** Lines of a table's declaration that are no columns. */
const constraint = /^(?:primary|foreign|unique|constraint|check|key|index)\b/iu;
const token = /--[^\n]*|'((?:[^']|'')*)'|[(),;]|[^\s(),;']+/gu;

/** Where text stands. */
interface Place {
  text: string;
  start: number;
}

/** A table of a database: the names of its columns, and its rows. */
interface DatabaseTable {
  name: string;
  rows: LiteralRecord[];
}

/** The zones of a dump of a database, and what was assumed to join its tables. */
export interface DumpRecords {
  records: LiteralRecord[];
  joined: { text: string; start: number; end: number }[];
}

/**
 * Reads the rows that statements put into tables (`INSERT INTO … VALUES`, ISO/IEC 9075-2), and joins tables where a column of one
 * holds the numbers of rows of another. `undefined` for other texts.
 */
export function dumpRecords(text: string): DumpRecords | undefined {
  const tables = tablesOf(text);
  const files = tables.filter(holdsFiles);
  if (files.length === 0) return undefined;
  // Zones are the rows that refer to others, and to which none refers.
  const links = tables.flatMap((from) => tables.flatMap((to) => linkOf(from, to) ?? []));
  const zones =
    tables.find(
      (one) =>
        links.some(({ from, to }) => from === one && (holdsFiles(one) || holdsFiles(to))) &&
        !links.some(({ to }) => to === one),
    ) ?? files[0];
  const own = links.filter(({ from }) => from === zones);
  const joined = own.map(({ column, to }) => {
    const { start, end } = zones.rows[0];
    return {
      text: `Each row of "${zones.name}" has the values of the row of "${to.name}" that its "${column}" names.`,
      start,
      end,
    };
  });
  const used = new Set(own.flatMap(({ from, column }) => from.rows.map((row) => givenBy(row, column))));
  for (const { to, key } of own)
    for (const row of to.rows) {
      const file = row.fields.find((field) => isAudioFileName(field.text));
      if (file && !used.has(givenBy(row, key)))
        joined.push({
          text: `No row of "${zones.name}" uses "${file.text}", so it is left out.`,
          start: row.start,
          end: row.end,
        });
    }
  return { records: zones.rows.map((row) => withLinked(row, own)), joined };
}

/** A column of one table whose values are those of a column of another, each of which is there once. */
interface Link {
  from: DatabaseTable;
  column: string;
  to: DatabaseTable;
  key: string;
  /** The rows by the values of their key. */
  rows: ReadonlyMap<string, LiteralRecord>;
}

function linkOf(from: DatabaseTable, to: DatabaseTable): Link | undefined {
  if (from === to || from.rows.length === 0 || to.rows.length === 0) return undefined;
  for (const { heading: key } of to.rows[0].fields) {
    const keys = to.rows.map((row) => givenBy(row, key));
    const known = new Set(keys);
    if (key === '' || known.size < keys.length) continue;
    for (const { heading: column } of from.rows[0].fields) {
      if (!areLinked(column, key, to.name)) continue;
      const values = from.rows.map((row) => givenBy(row, column)).filter((value) => value !== '');
      if (values.length === 0 || !values.every((value) => known.has(value))) continue;
      return { from, column, to, key, rows: new Map(to.rows.map((row) => [givenBy(row, key), row])) };
    }
  }
  return undefined;
}

const plainNumber = /^(?:id|uid|no|nr|num|number|rowid|key|code)$/u;

/** Whether the name of a column says that it refers to a column of a table: `audio_id`, `audio` or `file_ref` to `id`, `no` to `no`. */
function areLinked(column: string, key: string, table: string): boolean {
  const [own, other] = [column.toLowerCase(), key.toLowerCase()];
  const isNumber = plainNumber.test(other);
  const stem = table.toLowerCase().replace(/s$/u, '');
  if (own === other) return !isNumber && /id|no|nr|num|ref|code|key/u.test(own);
  // A number of its own refers to nothing.
  if (plainNumber.test(own)) return false;
  if (!isNumber && !/(?:id|no|nr|num|ref|code)$/u.test(other)) return false;
  return own.startsWith(stem) || /(?:^|_)(?:id|ref|no|nr|fk)$/u.test(own);
}

function withLinked(row: LiteralRecord, links: readonly Link[]): LiteralRecord {
  const fields = row.fields.filter(({ heading }) => !links.some(({ column }) => column === heading));
  const given = new Set(fields.map(({ heading }) => heading.toLowerCase()));
  for (const { column, key, rows } of links) {
    const value = givenBy(row, column);
    const other = value === '' ? undefined : rows.get(value);
    for (const field of other?.fields ?? [])
      if (field.heading !== key && !given.has(field.heading.toLowerCase())) fields.push(field);
  }
  return { ...row, fields };
}

function givenBy({ fields }: LiteralRecord, heading: string): string {
  return fields.find((field) => field.heading === heading)?.text ?? '';
}

function holdsFiles({ rows }: DatabaseTable): boolean {
  return rows.some(({ fields }) => fields.some(({ text }) => isAudioFileName(text)));
}

function tablesOf(text: string): DatabaseTable[] {
  const columns = new Map<string, Place[]>();
  const tables = new Map<string, DatabaseTable>();
  for (const { 0: all, 1: table, index } of text.matchAll(create))
    columns.set(bare(table), declaredColumns(text, index + all.length));
  let count = 0;
  for (const { 0: all, 1: table, 2: listed, index } of text.matchAll(insert)) {
    const of = bare(table);
    const from = index + all.lastIndexOf('(', all.length - 1) + 1;
    const names = listed === undefined ? (columns.get(of) ?? []) : placesIn(listed, from);
    const found = tables.get(of) ?? { name: of, rows: [] };
    tables.set(of, found);
    for (const row of rowsAt(text, index + all.length, names)) {
      if (++count > mostRows) return [...tables.values()];
      found.rows.push(row);
    }
  }
  return [...tables.values()];
}

/** The names of the columns that a table is declared with. */
function declaredColumns(text: string, from: number): Place[] {
  let depth = 1;
  let start = from;
  const found: Place[] = [];
  const take = (end: number) => {
    const part = text.slice(start, end).replace(/--[^\n]*/gu, (remark) => ' '.repeat(remark.length));
    const lead = part.length - part.trimStart().length;
    const [word = ''] = /^\S+/u.exec(part.trim()) ?? [];
    if (word !== '' && !constraint.test(word)) found.push({ text: bare(word), start: start + lead });
    start = end + 1;
  };
  for (let at = from; at < Math.min(text.length, from + longestColumns); at++) {
    if (text[at] === '(') depth++;
    else if (text[at] === ')' && --depth === 0) {
      take(at);
      break;
    } else if (text[at] === ',' && depth === 1) take(at);
  }
  return found;
}

function placesIn(listed: string, from: number): Place[] {
  let start = from;
  return listed.split(',').map((part) => {
    const place = { text: bare(part.trim()), start: start + part.length - part.trimStart().length };
    start += part.length + 1;
    return place;
  });
}

/** The rows in brackets from a place on, up to the end of the statement. */
function* rowsAt(text: string, from: number, names: readonly Place[]): Generator<LiteralRecord> {
  const reader = new RegExp(token.source, token.flags);
  reader.lastIndex = from;
  let fields: LiteralField[] = [];
  let [depth, start, place] = [0, from, 0];
  for (let found = reader.exec(text); found; found = reader.exec(text)) {
    const [all, quoted] = found;
    if (all === ';' || (depth === 0 && all !== ',' && all !== '(' && !all.startsWith('--'))) return;
    if (all === '(' && depth++ === 0) [fields, start, place] = [[], found.index, 0];
    else if (all === ')' && --depth === 0) yield { fields, start, end: found.index + 1 };
    else if (all === ',' && depth === 1) place++;
    else if (depth === 1 && !/^(?:[(),]$|--)/u.test(all)) {
      const named = names[place];
      const key = named && {
        kind: 'value' as const,
        isQuoted: false,
        ...named,
        end: named.start + named.text.length,
      };
      const isNothing = quoted === undefined && /^(?:null|default)$/iu.test(all);
      const value = isNothing ? '' : (quoted?.replaceAll("''", "'") ?? all);
      const at = found.index + (quoted === undefined ? 0 : 1);
      fields.push({
        heading: named?.text ?? '',
        key,
        text: value,
        start: at,
        end: at + (quoted ?? all).length,
      });
    }
  }
}

function bare(text: string): string {
  return text.replace(/[`"[\]]/g, '');
}
