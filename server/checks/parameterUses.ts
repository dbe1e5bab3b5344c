import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';
import type { CheckContext } from './rule';

/** Which parameters an instrument sets at all, so that rules about rare ones cost nothing where there are none. */
export interface ParameterUses {
  /** The canonical numbers of the names that occur, in the order of their first use. */
  names: readonly number[];
  /** The first parameter of each canonical number, or −1. */
  first: Int32Array;
  /** Parameters of global, master, group and region in whose place a later one of their header counts. */
  repeated: readonly number[];
  /** The last parameter of each canonical number, or −1, and for each parameter the one of its name before it. */
  last: Int32Array;
  before: Int32Array;
}

const known = new WeakMap<CheckContext, ParameterUses>();

/** The parameters that an instrument sets, worked out once in a check. */
export function parameterUsesOf(context: CheckContext): ParameterUses {
  let uses = known.get(context);
  if (!uses) {
    uses = collect(context.instrument);
    known.set(context, uses);
  }
  return uses;
}

/** The canonical number of an opcode name that the instrument sets, or −1 where it sets none. */
export function usedName(context: CheckContext, name: string): number {
  const { names } = context.instrument;
  const number = names.canonical(names.idOf(name));
  return (parameterUsesOf(context).first[number] ?? -1) >= 0 ? number : -1;
}

/** The parameters of a canonical number, the last one first. */
export function* parametersNamed(context: CheckContext, name: number): Iterable<number> {
  const { last, before } = parameterUsesOf(context);
  for (let at = last[name] ?? -1; at >= 0; at = before[at] as number) yield at;
}

function collect(instrument: Instrument): ParameterUses {
  const { names, headers, parameters } = instrument;
  const { size } = names;
  const canonical = new Int32Array(size);
  for (let name = 0; name < size; name++) canonical[name] = names.canonical(name);
  const first = new Int32Array(size).fill(-1);
  const latest = new Int32Array(size).fill(-1);
  const before = new Int32Array(parameters.count);
  const used: number[] = [];
  const repeated: number[] = [];
  for (let header = 0; header < headers.count; header++) {
    const start = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    const kind = instrument.kind(header);
    const canRepeat = kind >= HeaderKind.global && kind <= HeaderKind.region;
    for (let parameter = start; parameter < end; parameter++) {
      const name = canonical[parameters.cells[parameter * parameterStride] as number] as number;
      const earlier = latest[name] as number;
      before[parameter] = earlier;
      if (earlier < 0) {
        first[name] = parameter;
        used.push(name);
      } else if (earlier >= start && canRepeat) repeated.push(earlier);
      latest[name] = parameter;
    }
  }
  return { names: used, first, repeated, last: latest, before };
}
