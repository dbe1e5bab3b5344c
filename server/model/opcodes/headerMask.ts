import { HeaderKind } from '../headerKinds';
import type { OpcodeFacts } from './opcode';

const bit = (...kinds: HeaderKind[]) => kinds.reduce<number>((mask, kind) => mask | (1 << kind), 0);

/** `<midi>` and headers that the format does not know take anything: nothing certain can be said of them. */
const free = bit(HeaderKind.midi, HeaderKind.unknown);
const sounding = bit(HeaderKind.global, HeaderKind.master, HeaderKind.group, HeaderKind.region);
const control = bit(HeaderKind.control);
const global = bit(HeaderKind.global);
const effect = bit(HeaderKind.effect);
const curve = bit(HeaderKind.curve);
const sample = bit(HeaderKind.sample);
const everywhere = free | sounding | control | effect | curve | sample;

/** Single opcodes whose place is not that of their category. */
const byPattern: Readonly<Record<string, number>> = {
  '#define': everywhere,
  '#include': everywhere,
  default_path: control | global,
  note_offset: control | global,
  octave_offset: control | global,
  set_ccN: control | global,
  set_hdccN: control | global,
  'hint_*': everywhere,
  label_ccN: control | sounding,
  label_keyN: control | sounding,
  label_outputN: control | sounding,
  sw_note_offset: control | sounding,
  sw_octave_offset: control | sounding,
  sw_default: control | sounding,
  output: sounding | effect,
};

const byCategory: Readonly<Record<string, number>> = {
  'Real-Time Instrument Script': everywhere,
  Curves: curve,
  'Embedded Data': sample,
  Effects: sounding | effect,
  Loading: control | sounding,
  'Instrument Settings': sounding | effect,
  'Region Logic/MIDI Conditions': sounding | effect,
  'Performance Parameters/Amplifier': sounding | effect,
  'Performance Parameters/EQ': sounding | effect,
  'Performance Parameters/Filter': sounding | effect,
  'Performance Parameters/Pitch': sounding | effect,
  'Modulation/Envelope Generators': sounding | effect,
  'Modulation/LFO': sounding | effect,
};

/**
 * The headers that take an opcode, as bits `1 << HeaderKind`. The published table leaves the column empty, so this
 * is common practice, on the lenient side: a header is left out only where an opcode has clearly no meaning there.
 */
export function headerMaskOf(pattern: string, category: string): number {
  return (byPattern[pattern] ?? byCategory[category] ?? sounding) | free;
}

/** Whether a header of a kind takes an opcode (common practice, lenient). */
export function takesOpcode(header: HeaderKind, facts: Pick<OpcodeFacts, 'headers'>): boolean {
  return (facts.headers & (1 << header)) !== 0;
}
