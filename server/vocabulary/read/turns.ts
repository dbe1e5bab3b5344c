import type { Instrument } from '../../model/instrument';

/** A position in a round robin and how many turns that has. */
export interface RobinTurn {
  position: number;
  count: number;
}

/**
 * How many turns a round robin has where only positions in it are written, by the header that has the position: the greatest
 * position among the regions of the same keys, velocities and trigger, within the group where it holds several positions, else
 * over all groups, as where each position is a group of its own. Round robins of one turn are left out.
 * `byOrder`: positions count the regions of a group; those of the same keys and velocities then take turns in that order.
 */
export function turnCounts(instrument: Instrument, byOrder = false): ReadonlyMap<number, RobinTurn> {
  const { names } = instrument;
  const idOf = (name: string) => names.canonical(names.idOf(name));
  const [position, length, trigger] = [idOf('seq_position'), idOf('seq_length'), idOf('trigger')];
  const inAll = new Map<string, Set<number>>();
  const inGroups = new Map<string, Set<number>>();
  const found: { header: number; number: number; all: Set<number>; group: Set<number> }[] = [];
  for (const region of instrument.regions) {
    const parameter = instrument.effective(region, position);
    if (parameter < 0 || instrument.effective(region, length) >= 0) continue;
    const number = instrument.number(parameter);
    if (!(number >= 1)) continue;
    const when = instrument.effective(region, trigger);
    const conditions = [
      instrument.lowKey[region],
      instrument.highKey[region],
      instrument.lowVelocity[region],
      instrument.highVelocity[region],
      when < 0 ? '' : instrument.valueText(when),
    ].join(' ');
    const all = setOf(inAll, conditions);
    const group = setOf(inGroups, `${conditions} ${instrument.parent(region)}`);
    all.add(number);
    group.add(number);
    found.push({ header: instrument.headerOfParameter(parameter), number, all, group });
  }
  const turns = new Map<number, RobinTurn>();
  for (const { header, number, all, group } of found) {
    const most = byOrder ? group.size : Math.max(...(group.size > 1 ? group : all));
    const count = Math.max(most, turns.get(header)?.count ?? 1);
    const position = byOrder ? [...group].sort((one, other) => one - other).indexOf(number) + 1 : number;
    if (count > 1) turns.set(header, { position, count });
  }
  return turns;
}

function setOf(sets: Map<string, Set<number>>, key: string): Set<number> {
  let set = sets.get(key);
  if (!set) {
    set = new Set();
    sets.set(key, set);
  }
  return set;
}
