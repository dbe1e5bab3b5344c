import { HeaderKind } from '../../model/headerKinds';
import type { NewParameter } from '../../model/notation';
import { joinPath, nameOf } from '../../model/paths';
import { isPlainName, movedValue } from './movedValues';
import type { Refactoring, SelectedDocument } from './refactoring';
import { regionsIn, selectedRun } from './selection';

/** Puts selected regions into a group of their own. */
export const regionsToGroup: Refactoring = {
  id: 'regionsToGroup',
  kind: 'refactor.extract',
  offer(selected) {
    const { length } = selectedRun(selected);
    if (length === 0 || !groupLike(selected)) return undefined;
    return length === 1 ? 'Put the region into a new group' : `Put ${length} regions into a new group`;
  },
  make(selected) {
    const regions = selectedRun(selected);
    const [first] = regions;
    const last = regions.at(-1);
    const sets = groupLike(selected);
    if (first === undefined || last === undefined || !sets) return undefined;
    const { edits } = selected.notation.edit(selected.instrument, { kind: 'group', first, last, sets });
    return edits.length > 0 ? { edits } : undefined;
  },
};

/** What a group sets that is to hold the selected regions instead of theirs; `undefined` where they fill theirs already. */
function groupLike(selected: SelectedDocument): NewParameter[] | undefined {
  const { instrument } = selected;
  const regions = selectedRun(selected);
  const last = regions.at(-1);
  const parent = last === undefined ? -1 : instrument.parent(last);
  if (last === undefined) return undefined;
  if (parent < 0 || instrument.kind(parent) !== HeaderKind.group) return [];
  if (regionsIn(instrument, parent).length === regions.length) return undefined;
  const sets: NewParameter[] = [];
  for (let one = instrument.firstParameter(parent); one < instrument.endParameter(parent); one++) {
    const name = instrument.names.text(instrument.name(one));
    const value = movedValue(instrument, one, last);
    if (value === undefined || !isPlainName(name)) return undefined;
    sets.push({ name, value });
  }
  return sets;
}

/** Puts selected regions into a file of their own that is included in their place. */
export const regionsToFile: Refactoring = {
  id: 'regionsToFile',
  kind: 'refactor.extract',
  offer(selected) {
    const { length } = selected.folder === undefined ? [] : selectedRun(selected);
    if (length === 0) return undefined;
    return length === 1
      ? 'Move the region to an included file'
      : `Move ${length} regions to an included file`;
  },
  async make(selected) {
    const { notation, instrument, folder, samples } = selected;
    const regions = selectedRun(selected);
    const [first] = regions;
    const last = regions.at(-1);
    if (first === undefined || last === undefined || folder === undefined) return undefined;
    samples.folders.names(folder);
    const taken = (await samples.folders.fetchNames(folder)) ?? new Map();
    const base =
      nameOf(instrument.sources[0]?.path ?? '').replace(/(\.instrument)?\.\w+$/, '') || 'instrument';
    let path = '';
    for (let number = 1; path === '' || taken.has(path); number++)
      path = `${base}-regions${number > 1 ? `-${number}` : ''}.${notation.format}`;
    const { edits, newFile } = notation.edit(instrument, { kind: 'moveOut', first, last, path });
    if (newFile === undefined) return undefined;
    return { edits, newFile: { path: joinPath(folder, path), text: newFile } };
  },
};
