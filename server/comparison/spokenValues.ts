import type { Instrument } from '../model/instrument';
import { ValuesInForce } from '../playing/playable/valuesInForce';
import type { CauseKind } from './cause';

/** Opcodes that say what things are called, and change no sound. */
const silentName = /_label$|^label_|^(set_|note_offset$|octave_offset$)/;

/** Kinds of causes by what the name of an opcode begins with; the first that fits counts. */
const kinds: readonly (readonly [RegExp, CauseKind])[] = [
  [/^(sample|default_path)/, 'sample'],
  [/^(pitch_keycenter|key$)/, 'root'],
  [/^(ampeg|fileg|pitcheg|eg\d)/, 'envelope'],
  [/^(cutoff|fil|resonance|eq\d)/, 'filter'],
  [/^(pan|width|position)/, 'pan'],
  [/^(tune|transpose|pitch|bend)/, 'tuning'],
  [/^(loop)/, 'loop'],
  [/^(offset|delay)/, 'offset'],
  [/^(end)/, 'length'],
  [
    /^(sw_|seq_|lo|hi|trigger|group|off_|polyphony|note_|on_|start_|stop_|rt_dead|sustain|sostenuto)/,
    'condition',
  ],
  [/^(volume|amplitude|amp|gain|global_|master_|group_volume|xf|rt_decay)/, 'level'],
];

/** An opcode that two regions do not share. Parameters are those of either instrument, `undefined` where it is not set. */
export interface SpokenDifference {
  opcode: string;
  kind: CauseKind;
  a: number | undefined;
  b: number | undefined;
  message: string;
}

/** The values in force of the regions of an instrument as they stand in its text, worked out when first asked for. */
export class SpokenValues {
  readonly instrument: Instrument;
  #columns: Map<string, Int32Array> | undefined;

  constructor(instrument: Instrument) {
    this.instrument = instrument;
  }

  /** The parameters in force in a region by canonical name, without those that change no sound. */
  of(region: number): Map<string, number> {
    this.#columns ??= columnsOf(this.instrument);
    const parameters = new Map<string, number>();
    for (const [name, column] of this.#columns) if (column[region] >= 0) parameters.set(name, column[region]);
    return parameters;
  }

  text(parameter: number): string {
    return this.instrument.valueText(parameter).trim();
  }
}

/** The opcodes that only one of two regions has, or that have other values, in the order of the text. */
export function spokenDifferences(
  a: SpokenValues,
  b: SpokenValues,
  regions: { a: number; b: number },
): SpokenDifference[] {
  const [one, other] = [a.of(regions.a), b.of(regions.b)];
  const found: SpokenDifference[] = [];
  for (const opcode of new Set([...one.keys(), ...other.keys()])) {
    const [ofA, ofB] = [one.get(opcode), other.get(opcode)];
    const texts = [ofA === undefined ? undefined : a.text(ofA), ofB === undefined ? undefined : b.text(ofB)];
    if (saysTheSame(texts[0], texts[1])) continue;
    const [first, second] = texts.map((text) => (text === undefined ? 'not set' : text));
    const kind = kinds.find(([pattern]) => pattern.test(opcode))?.[1] ?? 'other';
    const message = `${opcode} is ${first} on the first side and ${second} on the second.`;
    found.push({ opcode, kind, a: ofA, b: ofB, message });
  }
  const place = (one: SpokenDifference) => one.a ?? one.b ?? 0;
  return found.sort((one, other) => place(one) - place(other));
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
