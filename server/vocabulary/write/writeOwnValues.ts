import { playedKey } from '../../model/effectiveValues';
import type { Instrument } from '../../model/instrument';
import type { WriteOptions } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { isAbsolutePath, joinPath, relativePath } from '../../model/paths';

/** A value that is to be written: in the terms of the open SFZ format, with the parameter that it comes from. */
export interface SourceValue {
  /** Its canonical name. */
  name: string;
  value: string;
  /** −1 where it comes from none. */
  parameter: number;
}

/** The names that `key` stands for. */
export const keyParts = ['lokey', 'hikey', 'pitch_keycenter'] as const;

/** Whether `key` stands for a name. */
export function isKeyPart(name: string): boolean {
  return name === 'lokey' || name === 'hikey' || name === 'pitch_keycenter';
}

/**
 * What a header sets itself, `key` as the three names that it stands for. Keys are numbers with note and octave offset
 * added, samples paths with `default_path` before them, led from the folder that `move` names; `settings` is a header in
 * whose place these settings are looked up.
 */
export function ownValues(
  instrument: Instrument,
  header: number,
  settings: number,
  move: WriteOptions['move'],
  repeated: (parameter: number) => void = () => {},
): Map<string, SourceValue> {
  const values = new Map<string, SourceValue>();
  const end = instrument.endParameter(header);
  for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
    const name = instrument.names.text(instrument.canonicalName(parameter));
    const value = sourceValue(instrument, parameter, settings, move);
    const before = values.get(name);
    if (before) repeated(before.parameter);
    if (name === 'key') {
      for (const part of keyParts) values.set(part, { name: part, value, parameter });
    } else values.set(name, { name, value, parameter });
  }
  return values;
}

/** The value of a parameter with what a `<control>` in force at `settings` does to it. */
export function sourceValue(
  instrument: Instrument,
  parameter: number,
  settings: number,
  move: WriteOptions['move'],
): string {
  const name = instrument.canonicalName(parameter);
  const text = instrument.valueText(parameter);
  const { keyOffset, defaultPath } = instrument.control(settings);
  if (name === Parameter.sample) return movedPath(text.startsWith('*') ? text : defaultPath + text, move);
  if (instrument.names.opcode(name)?.facts.kind !== 'key') return text;
  const key = instrument.keyNumber(parameter);
  if (Number.isNaN(key)) return text;
  const isShifted = key >= 0 && keyOffset !== 0 && playedKey.test(instrument.names.text(name));
  return String(isShifted ? Math.max(0, Math.min(127, key + keyOffset)) : key);
}

function movedPath(written: string, move: WriteOptions['move']): string {
  const path = written.startsWith('*') ? written : written.replaceAll('\\', '/');
  if (!move || move.from === move.to || path === '' || path.startsWith('*') || isAbsolutePath(path))
    return path;
  return relativePath(move.to, joinPath(move.from, path));
}
