import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { isOpcode, keyNames } from '../../model/style/keyParameters';
import { movedValue } from './movedValues';
import type { Refactoring, SelectedDocument } from './refactoring';
import { isWhollyHere, selectedHeaders } from './selection';

/** Writes `key` where the lowest key, the highest key and the root key are the same. */
export const joinKeys: Refactoring = {
  id: 'joinKeys',
  kind: 'refactor.rewrite',
  offer(selected) {
    return selectedHeaders(selected).some((header) => sameKeys(selected.instrument, header))
      ? 'Write lokey, hikey and pitch_keycenter as key'
      : undefined;
  },
  make({ notation, instrument, ...selected }) {
    const edits: TextEdit[] = [];
    for (const header of selectedHeaders({ notation, instrument, ...selected })) {
      const same = sameKeys(instrument, header);
      if (!same) continue;
      const [first, ...others] = same;
      edits.push(
        ...notation.edit(instrument, { kind: 'rename', parameter: first, name: 'key' }).edits,
        ...notation.edit(instrument, { kind: 'revise', header, remove: others, add: [] }).edits,
      );
    }
    return { edits };
  },
};

/** Writes `lokey`, `hikey` and `pitch_keycenter` where there is `key`. */
export const splitKeys: Refactoring = {
  id: 'splitKeys',
  kind: 'refactor.rewrite',
  offer(selected) {
    return selectedHeaders(selected).some((header) => onlyKey(selected.instrument, header) >= 0)
      ? 'Write key as lokey, hikey and pitch_keycenter'
      : undefined;
  },
  make(selected: SelectedDocument) {
    const { notation, instrument } = selected;
    const edits: TextEdit[] = [];
    for (const header of selectedHeaders(selected)) {
      const parameter = onlyKey(instrument, header);
      if (parameter < 0) continue;
      const value = movedValue(instrument, parameter, header);
      if (value === undefined) continue;
      edits.push(
        ...notation.edit(instrument, { kind: 'rename', parameter, name: 'lokey' }).edits,
        ...notation.edit(instrument, {
          kind: 'revise',
          header,
          remove: [],
          add: [
            { name: 'hikey', value },
            { name: 'pitch_keycenter', value },
          ],
        }).edits,
      );
    }
    return { edits };
  },
};

/** What a header sets about its keys. */
function ownKeys(instrument: Instrument, header: number): number[] {
  const found: number[] = [];
  for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++) {
    if (keyNames.has(instrument.canonicalName(one))) found.push(one);
  }
  return found;
}

/** The three parameters that say the same as `key`, in the order of the text. */
function sameKeys(instrument: Instrument, header: number): [number, number, number] | undefined {
  const own = ownKeys(instrument, header);
  const [first = -1, second = -1, third = -1] = own;
  if (own.length !== 3 || !isWhollyHere(instrument, header)) return undefined;
  const names = new Set(own.map((one) => instrument.canonicalName(one)));
  if (names.size !== 3 || names.has(Parameter.key) || own.some((one) => isOpcode(instrument, one)))
    return undefined;
  const key = instrument.keyNumber(first);
  if (!(key >= 0 && key <= 127) || own.some((one) => instrument.keyNumber(one) !== key)) return undefined;
  return [first, second, third];
}

/** The `key` of a header that sets nothing else about its keys, or −1. */
function onlyKey(instrument: Instrument, header: number): number {
  const [only = -1, ...more] = ownKeys(instrument, header);
  const fits =
    only >= 0 &&
    more.length === 0 &&
    instrument.canonicalName(only) === Parameter.key &&
    isWhollyHere(instrument, header) &&
    !isOpcode(instrument, only) &&
    !Number.isNaN(instrument.keyNumber(only));
  return fits ? only : -1;
}
