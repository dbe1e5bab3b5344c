import type { DocumentedType, ValueKind } from './opcode';

const keys =
  /^(?:sw_|xfin_|xfout_)?(?:lo|hi)key$|^key$|_keycenter$|^sw_(?:last|down|up|previous|default|lolast|hilast)$/;

const paths: ReadonlySet<string> = new Set(['sample', 'default_path', 'image', '#include']);

/**
 * Opcodes documented as integers for which a fraction makes no sense. Others that are documented so (controller
 * values, cents, decibels, aftertouch) are written with fractions in practice. `offset` counts frames, but is
 * a percentage under `offset_mode=percent`.
 */
const whole = new RegExp(
  `^(?:${[
    '(?:xfin_|xfout_)?(?:lo|hi)vel',
    '(?:lo|hi)(?:chan|prog)',
    'seq_(?:length|position)',
    'count|loop_count|end|loop_start|loop_end|delay_samples',
    'group|off_by|output|polyphony|note_polyphony|polyphony_stealing|off_curve',
    'note_offset|octave_offset|sw_note_offset|sw_octave_offset|transpose',
    '(?:sustain|sostenuto)_cc',
    '.*_curvecc[NXY]|curve_index',
    '(?:ampeg|fileg|pitcheg|egN|eqN)_(?:dynamic|decay_zero|release_zero)',
    'lfoN_(?:count|steps|wave|waveX)',
    'load_(?:mode|start|end)|sample_quality',
    'oscillator_(?:mode|multi|quality)',
    'dsp_order|param_offset',
  ].join('|')})$`,
);

/** What a value of an opcode has to be in practice, from its pattern and what the documentation says of it. */
export function valueKindOf(
  pattern: string,
  type: DocumentedType | undefined,
  options: readonly string[],
): ValueKind {
  if (keys.test(pattern)) return 'key';
  if (paths.has(pattern)) return 'path';
  if (type === 'integer') return whole.test(pattern) ? 'whole' : 'number';
  if (type === 'float') return 'number';
  if (options.length > 0) return 'option';
  return type === 'string' ? 'text' : 'any';
}
