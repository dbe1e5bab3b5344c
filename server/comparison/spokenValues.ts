import type { Instrument } from '../model/instrument';
import { ValuesInForce } from '../playing/playable/valuesInForce';
import type { Cause, CauseKind } from './cause';

/** Opcodes that say where things are or what they are called, and change no sound. */
const silentName =
  /^(sample|default_path|.*_label|label_.*|set_.*|note_.*|octave_.*|lokey|hikey|key|lovel|hivel|pitch_keycenter)$/;

/** Kinds of causes by what the name of an opcode begins with; the first that fits counts. */
const kinds: readonly (readonly [RegExp, CauseKind])[] = [
  [/^(ampeg|fileg|pitcheg|eg\d)/, 'envelope'],
  [/^(cutoff|fil|resonance|eq\d)/, 'filter'],
  [/^(pan|width|position)/, 'pan'],
  [/^(tune|transpose|pitch|bend)/, 'tuning'],
  [/^(loop)/, 'loop'],
  [/^(offset|delay)/, 'offset'],
  [/^(end)/, 'length'],
  [/^(sw_|seq_|lo|hi|trigger|group|off_|polyphony|on_)/, 'condition'],
  [/^(volume|amplitude|amp|gain|global_|master_|group_volume|xf)/, 'level'],
];

/** The values in force of the regions of an instrument as they stand in its text, worked out when first asked for. */
export class SpokenValues {
  readonly #instrument: Instrument;
  #columns: Map<string, Int32Array> | undefined;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /** The texts of a region's values by canonical name, without those that change no sound. */
  of(region: number): Map<string, string> {
    this.#columns ??= columnsOf(this.#instrument);
    const values = new Map<string, string>();
    for (const [name, column] of this.#columns) {
      const parameter = column[region];
      if (parameter >= 0) values.set(name, this.#instrument.valueText(parameter).trim());
    }
    return values;
  }
}

/** The first opcode that only one of two regions has, or that has another value; `undefined` where there is none. */
export function spokenCause(
  a: ReadonlyMap<string, string>,
  b: ReadonlyMap<string, string>,
): Cause | undefined {
  const names = [...new Set([...a.keys(), ...b.keys()])].sort();
  const differing = names.filter((name) => !saysTheSame(a.get(name), b.get(name)));
  const [first] = differing;
  if (first === undefined) return undefined;
  const words = (value: string | undefined) => (value === undefined ? 'not set' : value);
  const others = differing.length - 1;
  const more = others === 0 ? '' : ` ${others} more ${others === 1 ? 'opcode differs' : 'opcodes differ'}.`;
  return {
    kind: kinds.find(([pattern]) => pattern.test(first))?.[1] ?? 'other',
    message: `${first} is ${words(a.get(first))} on the first side and ${words(b.get(first))} on the second.${more}`,
  };
}

function saysTheSame(a: string | undefined, b: string | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && Number(a) === Number(b));
}

function columnsOf(instrument: Instrument): Map<string, Int32Array> {
  const values = new ValuesInForce(instrument);
  const columns = new Map<string, Int32Array>();
  for (const name of values.namesUsed()) {
    const text = instrument.names.text(name);
    const column = silentName.test(text) ? undefined : values.parameters(name);
    if (column) columns.set(text, column);
  }
  return columns;
}
