import type { Instrument } from '../../model/instrument';
import type { StepEnd } from '../vocabulary';
import type { OneEnd } from './stepRuns';
import { runsOf } from './stepRuns';

/** What tells which of several regions sounds. */
export type TakeParameter = 'lorand' | 'hirand' | 'seq_position' | 'seq_length';

/** The end of a range that an element lacks, or its root key, and the value that follows from those beside it. */
export interface StepValue {
  parameter: StepEnd | 'pitch_keycenter' | TakeParameter;
  value: number;
}

const partners: Readonly<Record<StepEnd, StepEnd>> = {
  lokey: 'hikey',
  hikey: 'lokey',
  lovel: 'hivel',
  hivel: 'lovel',
};

/**
 * Ends of ranges that follow from the ranges beside them, by header: a low end is one above the greatest lower high end among the
 * headers of one kind in the same one around, a high end one below the next low end. Velocities go by those of the same keys. Where
 * the ranges start anew, as for another layer, each run goes by itself. A single range of a run without either end is the outermost
 * one. An end that nothing lies before is left out.
 */
export function stepsIn(instrument: Instrument, ends: readonly StepEnd[]): ReadonlyMap<number, StepValue[]> {
  const found = new Map<number, StepValue[]>();
  for (const parameter of ends) {
    const isLow = parameter.startsWith('lo');
    const runs = [...groupsOf(instrument, parameter)].flatMap((group) => runsOf(group, isLow));
    for (const run of runs) {
      const numbers = [...new Set(run.map(({ number }) => number))].sort((one, other) => one - other);
      for (const { header, number } of run) {
        const at = numbers.indexOf(number);
        const beside = numbers[isLow ? at - 1 : at + 1];
        const value = isLow ? beside + 1 : beside - 1;
        // Behind the greatest key there is none.
        if (beside === undefined || !(value >= 0 && value <= greatest)) continue;
        const list = found.get(header) ?? [];
        list.push({ parameter, value });
        found.set(header, list);
      }
    }
  }
  return found;
}

const greatest = 127;

/** The headers that have the other end and not this one, those together that follow each other, and what could be the outermost of them. */
function groupsOf(instrument: Instrument, parameter: StepEnd): Iterable<OneEnd[]> {
  const { names } = instrument;
  const idOf = (name: string) => names.canonical(names.idOf(name));
  const [own, other, root] = [idOf(parameter), idOf(partners[parameter]), idOf('pitch_keycenter')];
  const isKey = parameter.endsWith('key');
  const keys = isKey ? [] : [idOf('lokey'), idOf('hikey'), idOf('key')];
  const ofRange = isKey ? [own, other, idOf('key')] : [own, other];
  const around = holdersOf(instrument, ofRange);
  const groups = new Map<string, OneEnd[]>();
  for (let header = 0; header < instrument.headers.count; header++) {
    if (instrument.own(header, own) >= 0) continue;
    const place = instrument.own(header, other);
    if (place < 0 && (around.has(header) || ofRange.some((name) => instrument.own(header, name) >= 0)))
      continue;
    const isOpen = place < 0;
    const number = isOpen ? (parameter.startsWith('lo') ? Infinity : -Infinity) : instrument.number(place);
    if (Number.isNaN(number)) continue;
    const range = keys.map((name) => {
      const key = instrument.effective(header, name);
      return key < 0 ? '' : instrument.number(key);
    });
    const id = [instrument.kind(header), instrument.parent(header), ...range].join(' ');
    const rootAt = instrument.own(header, root);
    const one = { header, number, root: isKey && rootAt >= 0 ? instrument.number(rootAt) : undefined };
    const group = groups.get(id);
    if (group) group.push(one);
    else groups.set(id, [one]);
  }
  return groups.values();
}

/** The headers around others that say something of a range. */
function holdersOf(instrument: Instrument, names: readonly number[]): ReadonlySet<number> {
  const holders = new Set<number>();
  for (let header = 0; header < instrument.headers.count; header++) {
    if (!names.some((name) => instrument.own(header, name) >= 0)) continue;
    for (
      let at = instrument.parent(header);
      at >= 0 && at !== header && !holders.has(at);
      at = instrument.parent(at)
    )
      holders.add(at);
  }
  return holders;
}
