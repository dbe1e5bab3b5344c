import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { NewParameter } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { keyNames } from '../../model/style/keyParameters';
import { isPlainName, movedValue } from './movedValues';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, regionsIn, selectedGroup } from './selection';

/** Writes what a group sets in each of its regions instead. */
export const pushDown: Refactoring = {
  id: 'pushDown',
  kind: 'refactor.rewrite',
  offer(selected) {
    return movableIn(selected) && 'Move the opcodes of the group down into its regions';
  },
  make(selected) {
    const movable = movableIn(selected);
    if (!movable) return undefined;
    const { notation, instrument } = selected;
    const { group, regions, parameters } = movable;
    const edits: TextEdit[] = notation.edit(instrument, {
      kind: 'revise',
      header: group,
      remove: parameters,
      add: [],
    }).edits;
    for (const region of regions) {
      const add = inheritedFrom(instrument, region, new Set(parameters));
      if (!add) return undefined;
      if (add.length > 0)
        edits.push(...notation.edit(instrument, { kind: 'revise', header: region, remove: [], add }).edits);
    }
    return { edits };
  },
};

function movableIn(
  selected: SelectedDocument,
): { group: number; regions: number[]; parameters: number[] } | undefined {
  const { instrument } = selected;
  const group = selectedGroup(selected);
  if (group < 0 || !isWhollyHere(instrument, group)) return undefined;
  const parameters: number[] = [];
  for (let one = instrument.firstParameter(group); one < instrument.endParameter(group); one++) {
    const name = instrument.names.text(instrument.name(one));
    // The label names the group itself.
    if (name.endsWith('_label')) continue;
    if (!isPlainName(name)) return undefined;
    parameters.push(one);
  }
  const regions = parameters.length > 0 ? regionsIn(instrument, group) : [];
  if (regions.length === 0 || !regions.every((region) => isWhollyHere(instrument, region))) return undefined;
  return { group, regions, parameters };
}

/** What a region gets from the given parameters of its group. */
function inheritedFrom(
  instrument: Instrument,
  region: number,
  parameters: ReadonlySet<number>,
): NewParameter[] | undefined {
  const found = instrument.effectiveParameters(region).filter(({ parameter }) => parameters.has(parameter));
  const byKey = found.filter(
    ({ name, parameter }) => keyNames.has(name) && instrument.canonicalName(parameter) === Parameter.key,
  );
  // `key` is written as such where all that it stands for comes from it.
  const asKey = byKey.length === 3 ? byKey[0]?.parameter : undefined;
  const add: NewParameter[] = [];
  if (asKey !== undefined) {
    const value = movedValue(instrument, asKey, region);
    if (value === undefined) return undefined;
    add.push({ name: instrument.names.text(instrument.name(asKey)), value });
  }
  for (const { name, parameter } of found) {
    if (parameter === asKey) continue;
    const value = movedValue(instrument, parameter, region);
    if (value === undefined) return undefined;
    const isKey = instrument.canonicalName(parameter) === Parameter.key;
    add.push({ name: instrument.names.text(isKey ? name : instrument.name(parameter)), value });
  }
  return add;
}
