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
  const rows: OpcodeRow[] = [];
  for (const line of table.rows.split('\n')) if (line !== '') rows.push(readRow(line, table.category));
  return rows;
}

function readRow(line: string, category: string): OpcodeRow {
  const cells = line.split(' | ');
  const facts = cells[1].split(' ');
  const type = facts[1];
  const row: Draft = {
    pattern: cells[0],
    category,
    level: facts[0] as OpcodeLevel,
    type: type === '-' ? undefined : (type as DocumentedType | undefined),
    unit: facts.length > 2 ? facts.slice(2).join(' ') : undefined,
    min: undefined,
    max: undefined,
    defaultText: undefined,
    options: none,
    modulates: undefined,
    aliases: none,
    seconds: none,
    subject: undefined,
    description: undefined,
  };
  for (let at = 2; at < cells.length; at++) addCell(row, cells[at]);
  return row;
}

function addCell(row: Draft, cell: string): void {
  const rest = cell.slice(1);
  switch (cell[0]) {
    case '[': {
      const dots = cell.indexOf('..');
      if (dots > 1) row.min = Number(cell.slice(1, dots));
      if (dots < cell.length - 3) row.max = Number(cell.slice(dots + 2, -1));
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
