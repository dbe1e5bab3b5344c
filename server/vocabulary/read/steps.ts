import type { Instrument } from '../../model/instrument';
import type { StepEnd } from '../vocabulary';

/** The end of a range that an element lacks, or its root key, and the value that follows from those beside it. */
export interface StepValue {
  parameter: StepEnd | 'pitch_keycenter';
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
 * headers of one kind in the same one around, a high end one below the next low end. Velocities go by those of the same keys. An
 * end that nothing lies before is left out.
 */
export function stepsIn(instrument: Instrument, ends: readonly StepEnd[]): ReadonlyMap<number, StepValue[]> {
  const found = new Map<number, StepValue[]>();
  for (const parameter of ends) {
    for (const group of groupsOf(instrument, parameter)) {
      const numbers = [...new Set(group.map(({ number }) => number))].sort((one, other) => one - other);
      for (const { header, number } of group) {
        const at = numbers.indexOf(number);
        const isLow = parameter.startsWith('lo');
        const beside = numbers[isLow ? at - 1 : at + 1];
        if (beside === undefined) continue;
        const list = found.get(header) ?? [];
        list.push({ parameter, value: isLow ? beside + 1 : beside - 1 });
        found.set(header, list);
      }
    }
  }
  return found;
}

interface OneEnd {
  header: number;
  number: number;
}

/** The headers that have the other end and not this one, those together that follow each other. */
function groupsOf(instrument: Instrument, parameter: StepEnd): Iterable<OneEnd[]> {
  const { names } = instrument;
  const idOf = (name: string) => names.canonical(names.idOf(name));
  const [own, other] = [idOf(parameter), idOf(partners[parameter])];
  const keys = parameter.endsWith('vel') ? [idOf('lokey'), idOf('hikey'), idOf('key')] : [];
  const groups = new Map<string, OneEnd[]>();
  for (let header = 0; header < instrument.headers.count; header++) {
    const place = instrument.own(header, other);
    if (place < 0 || instrument.own(header, own) >= 0) continue;
    const number = instrument.number(place);
    if (Number.isNaN(number)) continue;
    const around = [instrument.kind(header), instrument.parent(header)];
    const range = keys.map((name) => {
      const key = instrument.effective(header, name);
      return key < 0 ? '' : instrument.number(key);
    });
    const id = [...around, ...range].join(' ');
    const group = groups.get(id);
    if (group) group.push({ header, number });
    else groups.set(id, [{ header, number }]);
  }
  return groups.values();
}
