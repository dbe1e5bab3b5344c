import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { NewParameter } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { isOpcode, keyNames } from '../../model/style/keyParameters';
import { isPlainName, movedValue } from './movedValues';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, regionsIn, selectedGroup } from './selection';

/** Writes the opcodes that all regions of a group share once, in the group. */
export const shareOpcodes: Refactoring = {
  id: 'shareOpcodes',
  kind: 'refactor.rewrite',
  offer(selected) {
    const shared = sharedIn(selected);
    if (!shared) return undefined;
    const { instrument } = selected;
    const names = shared.parameters.map((parameter) => instrument.names.text(instrument.name(parameter)));
    return `Move ${listed(names)} of all regions up into the group`;
  },
  make(selected) {
    const shared = sharedIn(selected);
    if (!shared) return undefined;
    const { notation, instrument } = selected;
    const add: NewParameter[] = [];
    const moved = new Set<number>();
    for (const parameter of shared.parameters) {
      const value = movedValue(instrument, parameter, shared.group);
      if (value === undefined) continue;
      add.push({ name: instrument.names.text(instrument.name(parameter)), value });
      moved.add(instrument.canonicalName(parameter));
    }
    if (moved.size === 0) return undefined;
    const edits: TextEdit[] = [];
    for (const header of [shared.group, ...shared.regions]) {
      const remove = ownNamed(instrument, header, moved);
      const change = { kind: 'revise', header, remove, add: header === shared.group ? add : [] } as const;
      edits.push(...notation.edit(instrument, change).edits);
    }
    return { edits };
  },
};

function ownNamed(instrument: Instrument, header: number, names: ReadonlySet<number>): number[] {
  const found: number[] = [];
  for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++) {
    if (names.has(instrument.canonicalName(one))) found.push(one);
  }
  return found;
}

interface Shared {
  group: number;
  regions: number[];
  /** Those of the first region. */
  parameters: number[];
}

function sharedIn(selected: SelectedDocument): Shared | undefined {
  const { instrument } = selected;
  const group = selectedGroup(selected);
  if (group < 0 || !isWhollyHere(instrument, group)) return undefined;
  const regions = regionsIn(instrument, group);
  const [first] = regions;
  if (first === undefined || regions.length < 2) return undefined;
  const hasKey = regions.some((region) => instrument.own(region, Parameter.key) >= 0);
  const hasRange = regions.some(
    (region) =>
      instrument.own(region, Parameter.lokey) >= 0 ||
      instrument.own(region, Parameter.hikey) >= 0 ||
      instrument.own(region, Parameter.pitch_keycenter) >= 0,
  );
  let parameters: number[] = [];
  for (let one = instrument.firstParameter(first); one < instrument.endParameter(first); one++) {
    const name = instrument.canonicalName(one);
    const written = instrument.names.text(instrument.name(one));
    const mixesKeys = keyNames.has(name) && (name === Parameter.key ? hasRange : hasKey);
    if (mixesKeys || !isPlainName(written) || written.endsWith('_label')) continue;
    if (instrument.own(first, name) === one && movedValue(instrument, one, group) !== undefined)
      parameters.push(one);
  }
  for (const region of regions) {
    if (!isWhollyHere(instrument, region)) return undefined;
    parameters = parameters.filter((parameter) => isSharedBy(instrument, region, parameter));
    if (parameters.length === 0) return undefined;
  }
  const set = ownNamed(instrument, group, new Set(parameters.map((one) => instrument.canonicalName(one))));
  // A group that already sets `key` and gets a lower end would mean something else to others that read along.
  const mixed = keyMix(instrument, group, parameters);
  return mixed || set.some((one) => isOpcode(instrument, one)) ? undefined : { group, regions, parameters };
}

function isSharedBy(instrument: Instrument, region: number, parameter: number): boolean {
  const name = instrument.canonicalName(parameter);
  const own = instrument.own(region, name);
  return (
    own >= 0 && !isOpcode(instrument, own) && instrument.valueText(own) === instrument.valueText(parameter)
  );
}

/** Whether `key` and what it stands for would stand in one group. */
function keyMix(instrument: Instrument, group: number, parameters: readonly number[]): boolean {
  const moved = parameters.map((one) => instrument.canonicalName(one)).filter((name) => keyNames.has(name));
  if (moved.length === 0) return false;
  const own = ownNamed(instrument, group, keyNames).map((one) => instrument.canonicalName(one));
  const all = new Set([...moved, ...own]);
  return all.has(Parameter.key) && all.size > 1;
}

function listed(names: readonly string[]): string {
  return names.length > 3
    ? `${names.slice(0, 2).join(', ')} and ${names.length - 2} more opcodes`
    : names.join(', ');
}
