import { HeaderKind } from '../../model/headerKinds';
import { defaultNumberOf } from '../../model/opcodes/values';
import type { ValuesInForce } from '../../playing/playable/valuesInForce';
import { columnOpcodes } from './opcodeHandlers';
import type { NotRendered } from './program';
import { isForRecipe } from './takeOpcode';

/** Values that a recipe did not take, by the number of their name. */
export type RefusedValues = Map<number, Set<string>>;

/** Opcodes that the room `playing` answers: they decide when a region sounds, not how. */
const played =
  /^(key|(lo|hi)(key|vel|chan|prog|bend|bpm|timer|rand|chanaft|polyaft)|(on_|stop_)?(lo|hi)(hd)?ccN|trigger|seq_(length|position)|sw_(lokey|hikey|last|lolast|hilast|default|down|up|previous|vel|note_offset|octave_offset)|group|off_(by|mode|time)|polyphony|note_polyphony|note_selfmask|rt_dead|rt_decay(N(_time)?)?|sustain_(cc|lo|sw)|sostenuto_(cc|lo|sw)|delay(_random|_ccN)?|set_(hd)?ccN|note_offset|octave_offset|default_path)$/;

/** Opcodes that make no difference to the sound. */
const silent =
  /^(#define|#include|hint_\*|image|md5|load_(mode|start|end)|sample_quality|oscillator_quality|(global|master|group|region|sw)_label|label_(ccN|keyN|outputN)|curve_index|vNNN)$/;

/** Values that ask for nothing. */
const neutral: Readonly<Record<string, string>> = {
  oscillator: 'off',
  waveguide: 'off',
  noise_filter: 'off',
  noise_stereo: 'off',
  bus: 'main',
  oscillator_multi: '1',
};

/**
 * Everything that is in force in a region, or stands in an effect or in the treatment of MIDI, and that is not rendered:
 * one entry an opcode, and a value where others of it are rendered, in the order of the text.
 */
export function notRenderedIn(values: ValuesInForce, refused: RefusedValues): NotRendered[] {
  const { instrument } = values;
  const found = new Map<string, NotRendered & { first: number }>();
  const tell = (parameter: number, value?: string) => {
    const opcode = instrument.names.text(instrument.canonicalName(parameter));
    const key = `${opcode}=${value ?? ''}`;
    const entry = found.get(key);
    if (entry && entry.first <= parameter) {
      entry.count++;
      return;
    }
    const { source, start } = instrument.parameterSpan(parameter);
    const count = (entry?.count ?? 0) + 1;
    found.set(key, {
      opcode,
      ...(value !== undefined && { value }),
      count,
      source,
      offset: start,
      first: parameter,
    });
  };
  for (const name of values.namesUsed()) {
    const pattern = instrument.names.opcode(name)?.facts.pattern;
    const isTaken = pattern !== undefined && isForRecipe(pattern);
    if (isTaken ? !refused.has(name) : isAnswered(pattern)) continue;
    for (const parameter of new Set(values.parameters(name))) {
      if (parameter < 0) continue;
      const text = instrument.valueText(parameter);
      if (isTaken ? refused.get(name)?.has(text) : asksForSomething(values, name, parameter))
        tell(parameter, isTaken ? text : undefined);
    }
  }
  for (const parameter of parametersOfEffects(values)) tell(parameter);
  return [...found.values()].sort((a, b) => a.first - b.first).map(({ first: _, ...entry }) => entry);
}

function isAnswered(pattern: string | undefined): boolean {
  return (
    pattern !== undefined && (columnOpcodes.has(pattern) || played.test(pattern) || silent.test(pattern))
  );
}

function asksForSomething({ instrument }: ValuesInForce, name: number, parameter: number): boolean {
  const facts = instrument.names.opcode(name)?.facts;
  if (!facts) return true;
  const text = instrument.valueText(parameter).trim().toLowerCase();
  const number = instrument.number(parameter);
  if (text === neutral[facts.pattern] || text === facts.defaultText) return false;
  if (facts.modulates !== undefined && number === 0) return false;
  return Number.isNaN(number) || number !== defaultNumberOf(facts);
}

function* parametersOfEffects({ instrument }: ValuesInForce): Iterable<number> {
  for (let header = 0; header < instrument.headers.count; header++) {
    const kind = instrument.kind(header);
    if (kind !== HeaderKind.effect && kind !== HeaderKind.midi) continue;
    for (let at = instrument.firstParameter(header); at < instrument.endParameter(header); at++) yield at;
  }
}
