import type { DocumentedType, OpcodeLevel } from './opcode';

/** One category of the catalogue as it is written down in `data/`. */
export interface OpcodeTable {
  readonly category: string;
  /**
   * One opcode a line, cells separated by ` | `: the pattern; level, type and unit; then cells that are told
   * apart by their first character, each left out when the format states nothing:
   *
   * - `[0..127]` least and greatest value, either side may be empty
   * - `=0` default
   * - `{on,off}` options
   * - `>cutoff` the opcode that this one moves
   * - `~loopstart,…` other spellings
   * - `+cutoff2,…` further opcodes of the same kind: the second filter, further waveforms of an LFO
   * - `:the volume` the noun phrase for sentences about opcodes that move this one
   * - anything else: the description. A line without one gets a sentence made from its name.
   */
  readonly rows: string;
}

/** A line of an {@link OpcodeTable}, cut into its cells. */
export interface OpcodeRow {
  readonly pattern: string;
  readonly category: string;
  readonly level: OpcodeLevel;
  readonly type?: DocumentedType;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly defaultText?: string;
  readonly options: readonly string[];
  readonly modulates?: string;
  readonly aliases: readonly string[];
  readonly seconds: readonly string[];
  readonly subject?: string;
  readonly description?: string;
}

type Draft = { -readonly [K in keyof OpcodeRow]: OpcodeRow[K] };

const none: readonly string[] = [];

/** Cuts a table into its rows, in order. */
export function readOpcodeTable(table: OpcodeTable): OpcodeRow[] {
  return table.rows
    .trim()
    .split('\n')
    .map((line) => readRow(line, table.category));
}

function readRow(line: string, category: string): OpcodeRow {
  const [pattern = '', facts = '', ...cells] = line.split(' | ');
  const [level, type, ...unit] = facts.split(' ');
  const row: Draft = {
    pattern,
    category,
    level: level as OpcodeLevel,
    options: none,
    aliases: none,
    seconds: none,
  };
  if (type && type !== '-') row.type = type as DocumentedType;
  if (unit.length > 0) row.unit = unit.join(' ');
  for (const cell of cells) addCell(row, cell);
  return row;
}

function addCell(row: Draft, cell: string): void {
  const rest = cell.slice(1);
  switch (cell[0]) {
    case '[': {
      const [min = '', max = ''] = cell.slice(1, -1).split('..');
      if (min !== '') row.min = Number(min);
      if (max !== '') row.max = Number(max);
      break;
    }
    case '=':
      row.defaultText = rest;
      break;
    case '{':
      row.options = cell.slice(1, -1).split(',');
      break;
    case '>':
      row.modulates = rest;
      break;
    case '~':
      row.aliases = rest.split(',');
      break;
    case '+':
      row.seconds = rest.split(',');
      break;
    case ':':
      row.subject = rest;
      break;
    default:
      row.description = cell;
  }
}
