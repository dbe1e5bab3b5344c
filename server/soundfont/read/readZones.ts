import type { GlobalZone, Modulator, Zone } from '../font';
import { Generator, generatorFacts } from '../generators';
import { FontError } from './fontError';
import type { Problems } from './problems';
import type { RecordList } from './recordLists';
import { listContents } from './recordLists';

/** The lists that zones of one level stand in. */
export interface ZoneLists {
  bags: RecordList;
  generators: RecordList;
  modulators: RecordList;
  level: 'preset' | 'instrument';
}

/** Fails with a {@link FontError} where the positions in a list of zones fall or lead past the lists that they mean. */
export function checkBags({ bags, generators, modulators }: ZoneLists): void {
  for (const [offset, list] of [
    [0, generators],
    [2, modulators],
  ] as const) {
    let before = 0;
    for (let bag = 0; bag < bags.count; bag++) {
      const index = bags.view.getUint16(bag * bags.stride + offset, true);
      const place = `zone ${bag} in the list of ${listContents[bags.name]} (${bags.name})`;
      if (index < before)
        throw new FontError(
          `${place} starts at record ${index} of ${list.name}, before the zone ahead of it`,
        );
      if (index > list.count)
        throw new FontError(
          `${place} starts at record ${index} of ${list.name}, which has ${list.count} records`,
        );
      before = index;
    }
  }
}

/** The zones from one bag up to another: the global one, where there is one, apart. */
export function readFontZones(
  lists: ZoneLists,
  firstBag: number,
  endBag: number,
  problems: Problems,
): { global: GlobalZone | undefined; zones: Zone[] } {
  let global: GlobalZone | undefined;
  const zones: Zone[] = [];
  for (let bag = firstBag; bag < endBag; bag++) {
    const { target, ...zone } = readZone(lists, bag, problems);
    if (target !== undefined) zones.push({ ...zone, target });
    else if (bag === firstBag && endBag - firstBag > 1) global = zone;
    else if (zone.generators.size > 0 || zone.modulators.length > 0)
      problems.add(
        lists.level === 'preset'
          ? 'A zone that names no instrument is not used.'
          : 'A zone that names no sample is not used.',
      );
  }
  return { global, zones };
}

type ReadZone = Omit<Zone, 'target'> & { target: number | undefined };

function readZone(lists: ZoneLists, bag: number, problems: Problems): ReadZone {
  const { bags, generators: list, level } = lists;
  const first = bags.view.getUint16(bag * bags.stride, true);
  const end = Math.min(list.count, bags.view.getUint16((bag + 1) * bags.stride, true));
  const generators = new Map<number, number>();
  const zone: ReadZone = {
    lowKey: 0,
    highKey: 127,
    lowVelocity: 0,
    highVelocity: 127,
    generators,
    modulators: readModulators(lists, bag),
    target: undefined,
  };
  const last = level === 'preset' ? Generator.instrument : Generator.sample;
  for (let record = first; record < end; record++) {
    const at = record * list.stride;
    const operator = list.view.getUint16(at, true);
    const value = list.view.getInt16(at + 2, true);
    const low = list.view.getUint8(at + 2);
    const high = list.view.getUint8(at + 3);
    if (operator === last) {
      zone.target = value & 0xffff;
      if (record + 1 < end) problems.add('Values after the end of their zone are not used.');
      break;
    }
    if (operator === Generator.keyRange) {
      if (record === first) [zone.lowKey, zone.highKey] = [low, high];
      else problems.add('A key range that is not first in its zone is not used.');
    } else if (operator === Generator.velocityRange) {
      const isInPlace =
        record === first ||
        (record === first + 1 && list.view.getUint16(first * list.stride, true) === Generator.keyRange);
      if (isInPlace) [zone.lowVelocity, zone.highVelocity] = [low, high];
      else
        problems.add(
          'A velocity range that is not first in its zone or right after its key range is not used.',
        );
    } else if (takes(level, operator)) generators.set(operator, value);
    else if (!isUnused(operator))
      problems.add(`Generator ${operator} has no meaning in ${level}s and is not used.`);
  }
  return zone;
}

function takes(level: ZoneLists['level'], operator: number): boolean {
  const facts = generatorFacts.get(operator);
  return facts !== undefined && (level === 'instrument' || facts.level === 'both');
}

/** Numbers that the format reserves and that files carry without meaning (section 8.1.2): 14, 18–20, 42, 49, 55, 59, 60. */
function isUnused(operator: number): boolean {
  return [14, 18, 19, 20, 42, 49, 55, 59, 60].includes(operator);
}

function readModulators({ bags, modulators: list }: ZoneLists, bag: number): Modulator[] {
  const first = bags.view.getUint16(bag * bags.stride + 2, true);
  const end = Math.min(list.count, bags.view.getUint16((bag + 1) * bags.stride + 2, true));
  const modulators: Modulator[] = [];
  for (let record = first; record < end; record++) {
    const at = record * list.stride;
    modulators.push({
      source: list.view.getUint16(at, true),
      destination: list.view.getUint16(at + 2, true),
      amount: list.view.getInt16(at + 4, true),
      amountSource: list.view.getUint16(at + 6, true),
      transform: list.view.getUint16(at + 8, true),
    });
  }
  return modulators;
}
