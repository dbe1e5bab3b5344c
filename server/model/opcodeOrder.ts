import { listOpcodes } from './opcodes/resolve';
import type { ParameterNames } from './parameterNames';

/** What is written first, in this order. Names in one word group keep their order: the last of them counts. */
const first = [
  'region_label group_label master_label global_label',
  'sample',
  'key lokey hikey pitch_keycenter',
  'lovel',
  'hivel',
  'trigger',
  'seq_length',
  'seq_position',
  'lorand',
  'hirand',
  'sw_lokey',
  'sw_hikey',
  'sw_last',
  'sw_default',
  'sw_label',
  'group',
  'off_by',
  'off_mode',
  'loop_mode',
  'loop_start',
  'loop_end',
  'offset',
  'end',
  'volume',
  'pan',
  'tune',
  'transpose',
];

const leading: ReadonlyMap<string, number> = new Map(
  first.flatMap((names, rank) => names.split(' ').map((name) => [name, rank] as const)),
);

let patterns: ReadonlyMap<string, number> | undefined;
const ranks = new WeakMap<ParameterNames, number[]>();

/**
 * The place of a parameter in the usual order, by the number of its name; equal for names between which the order
 * matters. What is not among the first follows in the order of the catalogue, unknown names last.
 */
function opcodeRank(names: ParameterNames, name: number): number {
  let known = ranks.get(names);
  if (!known) {
    known = [];
    ranks.set(names, known);
  }
  let rank = known[name];
  if (rank === undefined) {
    rank = findRank(names, names.canonical(name));
    known[name] = rank;
  }
  return rank;
}

function findRank(names: ParameterNames, canonical: number): number {
  const rank = leading.get(names.text(canonical));
  if (rank !== undefined) return rank;
  patterns ??= new Map(listOpcodes().map(({ pattern }, place) => [pattern, place]));
  const resolved = names.opcode(canonical);
  const facts = resolved?.facts;
  const place = facts && (patterns.get(facts.pattern) ?? patterns.get(facts.modulates ?? ''));
  // Opcodes of one family stand in the order of their numbers.
  const [index = 0] = resolved?.indexes.slice(-1) ?? [];
  return first.length + (place ?? patterns.size) + Math.min(index, 998) / 1000;
}

/** Puts things in the usual order of their names; those between which the order matters keep theirs. */
export function inUsualOrder<Thing>(
  things: readonly Thing[],
  names: ParameterNames,
  nameOf: (thing: Thing) => number,
): Thing[] {
  return [...things].sort((a, b) => opcodeRank(names, nameOf(a)) - opcodeRank(names, nameOf(b)));
}
