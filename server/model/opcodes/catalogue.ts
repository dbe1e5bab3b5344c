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
  readonly subjects: ReadonlyMap<string, string>;
}

let built: Catalogue | undefined;

/** The catalogue, put together when it is first asked for. */
export function catalogue(): Catalogue {
  built ??= build();
  return built;
}

function build(): Catalogue {
  const rows = withSeconds(opcodeTables.flatMap(readOpcodeTable));
  const subjects = new Map<string, string>();
  for (const row of rows) {
    const subject = row.subject ?? (row.description ? undefined : describeRouting(row.pattern)?.subject);
    if (subject !== undefined) subjects.set(row.pattern, subject);
  }
  const facts = rows.map((row) => factsOf(row, subjects));
  return { facts, byPattern: new Map(facts.map((one) => [one.pattern, one])), subjects };
}

function factsOf(row: OpcodeRow, subjects: ReadonlyMap<string, string>): OpcodeFacts {
  // Written out, not spread: all facts share one shape, which is quicker to build and to read.
  return {
    pattern: row.pattern,
    level: row.level,
    category: row.category,
    type: row.type,
    unit: row.unit,
    min: row.min,
    max: row.max,
    defaultText: row.defaultText,
    options: row.options,
    modulates: row.modulates,
    aliases: row.aliases,
    description: row.description ?? sentenceFor(row, subjects),
    kind: valueKindOf(row.pattern, row.type, row.options),
    headers: headerMaskOf(row.pattern, row.category),
  };
}

function sentenceFor(row: OpcodeRow, subjects: ReadonlyMap<string, string>): string {
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
