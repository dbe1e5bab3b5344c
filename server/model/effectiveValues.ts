import type { Instrument } from './instrument';
import { Parameter } from './parameterNames';

/**
 * The values in force in a region by canonical SFZ opcode name, in the order in which they were set, outermost header
 * first. Numbers are numbers, note names are key numbers (middle C = 60), note and octave offset are added to keys,
 * `key` appears as the three opcodes that it stands for, and `sample` is the path after `default_path`, with `/`.
 */
export function effectiveValues(instrument: Instrument, region: number): Record<string, number | string> {
  const values: Record<string, number | string> = {};
  const { keyOffset } = instrument.control(region);
  for (const { name, parameter } of instrument.effectiveParameters(region)) {
    const opcode = instrument.names.opcode(name);
    const kind = opcode?.facts.kind;
    const text = instrument.valueText(parameter);
    let value: number | string = text;
    if (name === Parameter.sample) value = instrument.samplePath(region) ?? text;
    else if (kind === 'key') {
      const key = instrument.keyNumber(parameter);
      if (!Number.isNaN(key))
        value = shifted(key, playedKey.test(instrument.names.text(name)) ? keyOffset : 0);
    } else if (kind !== 'text' && kind !== 'path' && kind !== 'option') {
      const number = instrument.number(parameter);
      if (!Number.isNaN(number)) value = number;
    }
    values[shownName(instrument, name, parameter)] = value;
  }
  return values;
}

/** The canonical name, with its numbers written as the text writes them: `lfo03_freq` and `lfo3_freq` are one opcode. */
function shownName(instrument: Instrument, name: number, parameter: number): string {
  const canonical = instrument.names.text(name);
  const written = instrument.names.text(instrument.name(parameter)).toLowerCase();
  return plainNumbers(written) === plainNumbers(canonical) ? written : canonical;
}

function plainNumbers(name: string): string {
  return name.replace(/\d+/g, (digits) => String(Number(digits)));
}

function shifted(key: number, offset: number): number {
  return key < 0 || offset === 0 ? key : Math.max(0, Math.min(127, key + offset));
}

/** Keys that note and octave offset move: those that answer to what is played, not centres of tracking. */
export const playedKey = /^(key|lokey|hikey|pitch_keycenter|sw_.+|xf(in|out)_(lo|hi)key)$/;
