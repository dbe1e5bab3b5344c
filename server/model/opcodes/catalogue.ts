import { opcodeTables } from './data/tables';
import { describeModulation, describeRouting } from './describe';
import { headerMaskOf } from './headerMask';
import type { OpcodeFacts } from './opcode';
import type { OpcodeRow } from './opcodeTable';
import { readOpcodeTable } from './opcodeTable';
import { valueKindOf } from './valueKind';

/** The facts of every opcode by pattern, and the noun phrases for sentences about what moves them. */
export interface Catalogue {
  readonly facts: readonly OpcodeFacts[];
  readonly byPattern: ReadonlyMap<string, OpcodeFacts>;
  readonly subjects: Pick<ReadonlyMap<string, string>, 'get'>;
}

let built: Catalogue | undefined;

/** The catalogue, put together when it is first asked for. */
export function catalogue(): Catalogue {
  built ??= build();
  return built;
}

function build(): Catalogue {
  const rows = withSeconds(opcodeTables.flatMap(readOpcodeTable));
  const subjects = new Subjects(rows);
  const facts = rows.map((row) => new RowFacts(row, subjects));
  return { facts, byPattern: new Map(facts.map((one) => [one.pattern, one])), subjects };
}

/** The noun phrases for sentences, worked out when one is first asked for: most runs need none. */
class Subjects {
  readonly #rows: readonly OpcodeRow[];
  #known: Map<string, string> | undefined;

  constructor(rows: readonly OpcodeRow[]) {
    this.#rows = rows;
  }

  get(pattern: string): string | undefined {
    this.#known ??= this.#all();
    return this.#known.get(pattern);
  }

  #all(): Map<string, string> {
    const known = new Map<string, string>();
    for (const row of this.#rows) {
      const subject = row.subject ?? (row.description ? undefined : describeRouting(row.pattern)?.subject);
      if (subject !== undefined) known.set(row.pattern, subject);
    }
    return known;
  }
}

/** The facts of a row; one shape for all is quicker to build and to read. */
class RowFacts implements OpcodeFacts {
  readonly pattern: string;
  readonly level: OpcodeFacts['level'];
  readonly category: string;
  readonly type: OpcodeFacts['type'];
  readonly unit: string | undefined;
  readonly min: number | undefined;
  readonly max: number | undefined;
  readonly defaultText: string | undefined;
  readonly options: readonly string[];
  readonly modulates: string | undefined;
  readonly aliases: readonly string[];
  readonly kind: OpcodeFacts['kind'];
  readonly headers: number;
  readonly #row: OpcodeRow;
  readonly #subjects: Subjects;
  #description: string | undefined;

  constructor(row: OpcodeRow, subjects: Subjects) {
    this.pattern = row.pattern;
    this.level = row.level;
    this.category = row.category;
    this.type = row.type;
    this.unit = row.unit;
    this.min = row.min;
    this.max = row.max;
    this.defaultText = row.defaultText;
    this.options = row.options;
    this.modulates = row.modulates;
    this.aliases = row.aliases;
    this.kind = valueKindOf(row.pattern, row.type, row.options);
    this.headers = headerMaskOf(row.pattern, row.category);
    this.#row = row;
    this.#subjects = subjects;
  }

  get description(): string {
    this.#description ??= this.#row.description ?? sentenceFor(this.#row, this.#subjects);
    return this.#description;
  }
}

function sentenceFor(row: OpcodeRow, subjects: Subjects): string {
  const target = row.modulates === undefined ? undefined : (subjects.get(row.modulates) ?? row.modulates);
  const sentence =
    target === undefined
      ? describeRouting(row.pattern)?.description
      : describeModulation({ pattern: row.pattern, target, ...(row.unit && { unit: row.unit }) });
  return sentence ?? `Part of ${row.category}.`;
}

/**
 * Adds the opcodes that the published table lists beside others as further parameters of the same kind: those of the
 * second filter and of an LFO's further waveforms. What moves the first has its counterpart that moves the second.
 */
function withSeconds(rows: readonly OpcodeRow[]): OpcodeRow[] {
  const all: OpcodeRow[] = [];
  const present = new Set(rows.map((row) => row.pattern));
  const seconds = new Map<string, string>();
  for (const row of rows) {
    all.push(row);
    for (const pattern of row.seconds) {
      all.push(secondOf(row, pattern));
      seconds.set(row.pattern, pattern);
    }
    const second = row.modulates === undefined ? undefined : seconds.get(row.modulates);
    if (second === undefined || !row.pattern.startsWith(row.modulates as string)) continue;
    const pattern = second + row.pattern.slice(row.modulates?.length);
    // A further waveform's own number comes first, so that its controller takes the next letter: left to derivation.
    if (second.endsWith('X') || present.has(pattern)) continue;
    const { description: _, ...rest } = row;
    all.push({
      ...rest,
      pattern,
      modulates: second,
      aliases: row.aliases.map((one) => second + one.slice(row.modulates?.length)),
    });
  }
  return all;
}

function secondOf(row: OpcodeRow, pattern: string): OpcodeRow {
  const further = pattern.endsWith('X');
  const lead = further ? 'For further waveform X of the LFO' : 'For the second filter';
  const { description, subject, ...rest } = row;
  return {
    ...rest,
    pattern,
    aliases: [],
    seconds: [],
    ...(description && {
      description: `${lead}: ${description[0]?.toLowerCase()}${description.slice(1).replaceAll('fil_', 'fil2_')}`,
    }),
    ...(subject && {
      subject: further ? `${subject}, further waveform X` : `${subject} of the second filter`,
    }),
  };
}
