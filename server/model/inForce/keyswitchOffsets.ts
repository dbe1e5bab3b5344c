import type { Instrument } from '../instrument';
import type { Control } from '../instrumentParts';

/**
 * Semitones that the keyswitches of a header are moved by: those of all keys, and `sw_note_offset`, `sw_octave_offset`,
 * which stand under the last `<control>` before it.
 */
export function keyswitchOffsets(instrument: Instrument): (header: number) => number {
  const names = ['sw_note_offset', 'sw_octave_offset'].map((name) => instrument.names.idOf(name));
  let last: Control | undefined;
  let offset = 0;
  return (header) => {
    const control = instrument.control(header);
    if (control === last) return offset;
    last = control;
    const [note, octave] = names.map((name) => {
      const parameter = control.header < 0 ? -1 : instrument.own(control.header, name);
      const value = parameter < 0 ? Number.NaN : instrument.number(parameter);
      return Number.isNaN(value) ? 0 : Math.trunc(value);
    });
    offset = control.keyOffset + note + 12 * octave;
    return offset;
  };
}
