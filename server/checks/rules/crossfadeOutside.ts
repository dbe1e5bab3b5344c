import type { Instrument } from '../../model/instrument';
import { columnInForce } from '../facts/parameters/columnsInForce';
import { parameterUsesOf } from '../facts/parameters/parameterUses';
import type { CheckContext, Rule } from '../rule';

/** What a crossfade follows: the names of its ends and of the region's own range. */
interface Subject {
  /** Canonical numbers, −1 where the instrument does not set the name: fade in, fade out, the region's range. */
  names: readonly [inLow: number, inHigh: number, outLow: number, outHigh: number, low: number, high: number];
  kind: 'keys' | 'velocities' | 'values';
}

/**
 * Finds crossfades that lie wholly outside the range of their region: one that leaves the region silent for ever, or
 * one of the region's own that changes nothing. A fade whose two ends are equal is how programs write that there is none.
 */
export const crossfadeOutside: Rule = {
  code: 'crossfade-outside',
  severity: 'warning',
  finds: 'A crossfade that lies wholly outside the keys, velocities or controller values of its region.',
  check(context, report) {
    const { instrument } = context;
    for (const { names, kind } of subjectsOf(context)) {
      const columns = names.map((name) => columnInForce(instrument, name));
      const seen = new Set<string>();
      for (const region of instrument.regions) {
        const row = columns.map((column) => column?.[region] ?? -1);
        const [low, high] = rangeOf(instrument, region, kind, row);
        if (!(low >= 0 && high >= low)) continue;
        for (const isIn of [true, false]) {
          const from = row[isIn ? 0 : 2];
          const to = row[isIn ? 1 : 3];
          if (from < 0 || to < 0) continue;
          const fade = [from, to].map((end) => endOf(instrument, region, end, kind)) as [number, number];
          if (!(fade[0] < fade[1]) || (fade[0] <= high && fade[1] >= low)) continue;
          const silent = isIn ? fade[0] > high : fade[1] < low;
          if (!silent && from < instrument.firstParameter(region)) continue;
          const id = `${from} ${to} ${low} ${high}`;
          if (seen.has(id)) continue;
          seen.add(id);
          const effect = silent ? 'the region is silent' : 'it changes nothing';
          report({
            ...instrument.valueSpan(isIn === silent ? from : to),
            message: `The fade-${isIn ? 'in' : 'out'} from ${fade[0]} to ${fade[1]} lies outside the region's ${kind}, ${low} to ${high}, so ${effect}. Make the two ranges overlap.`,
            related: [{ ...instrument.headerSpan(region), message: 'The region is here.' }],
          });
        }
      }
    }
  },
};

function subjectsOf(context: CheckContext): Subject[] {
  const { instrument } = context;
  const { names, first } = parameterUsesOf(context);
  const subjects = new Set<string>();
  for (const name of names) {
    const subject = /^xf(?:in|out)_(?:lo|hi)(key|vel|(?:hd)?cc\d+)$/.exec(instrument.names.text(name))?.[1];
    if (subject !== undefined) subjects.add(subject);
  }
  return [...subjects].map((subject) => {
    const number = (name: string) => {
      const found = instrument.names.canonical(instrument.names.idOf(name));
      return (first[found] ?? -1) >= 0 ? found : -1;
    };
    return {
      names: [
        number(`xfin_lo${subject}`),
        number(`xfin_hi${subject}`),
        number(`xfout_lo${subject}`),
        number(`xfout_hi${subject}`),
        number(`lo${subject}`),
        number(`hi${subject}`),
      ],
      kind: subject === 'key' ? 'keys' : subject === 'vel' ? 'velocities' : 'values',
    };
  });
}

function rangeOf(
  instrument: Instrument,
  region: number,
  kind: Subject['kind'],
  row: readonly number[],
): [low: number, high: number] {
  if (kind === 'keys') return [instrument.lowKey[region], instrument.highKey[region]];
  if (kind === 'velocities') {
    return [instrument.lowVelocity[region], instrument.highVelocity[region]];
  }
  const low = row[4];
  const high = row[5];
  return [
    low < 0 ? 0 : instrument.number(low),
    high < 0 ? Number.POSITIVE_INFINITY : instrument.number(high),
  ];
}

function endOf(instrument: Instrument, region: number, parameter: number, kind: Subject['kind']): number {
  return kind === 'keys'
    ? instrument.keyNumber(parameter) + instrument.control(region).keyOffset
    : instrument.number(parameter);
}
