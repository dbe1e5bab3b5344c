import type { DocumentedType, ValueKind } from './opcode';

const keys: ReadonlySet<string> = new Set(
  (
    'key lokey hikey xfin_lokey xfin_hikey xfout_lokey xfout_hikey sw_lokey sw_hikey sw_last sw_down sw_up ' +
    'sw_previous sw_default sw_lolast sw_hilast'
  ).split(' '),
);

const paths: ReadonlySet<string> = new Set(['sample', 'default_path', 'image', '#include']);

/**
 * Opcodes documented as integers for which a fraction makes no sense. Others that are documented so (controller
 * values, cents, decibels, aftertouch) are written with fractions in practice. `offset` counts frames, but is
 * a percentage under `offset_mode=percent`.
 */
const whole: ReadonlySet<string> = new Set(
  (
    'lovel hivel xfin_lovel xfin_hivel xfout_lovel xfout_hivel lochan hichan loprog hiprog seq_length seq_position ' +
    'count loop_count end loop_start loop_end delay_samples group off_by output polyphony note_polyphony ' +
    'polyphony_stealing off_curve note_offset octave_offset sw_note_offset sw_octave_offset transpose sustain_cc ' +
    'sostenuto_cc curve_index eqN_dynamic egN_dynamic ampeg_dynamic fileg_dynamic pitcheg_dynamic ampeg_decay_zero ' +
    'fileg_decay_zero pitcheg_decay_zero ampeg_release_zero fileg_release_zero pitcheg_release_zero lfoN_count ' +
    'lfoN_steps lfoN_wave lfoN_waveX load_mode load_start load_end sample_quality oscillator_mode oscillator_multi ' +
    'oscillator_quality dsp_order param_offset'
  ).split(' '),
);

/** What a value of an opcode has to be in practice, from its pattern and what the documentation says of it. */
export function valueKindOf(
  pattern: string,
  type: DocumentedType | undefined,
  options: readonly string[],
): ValueKind {
  if (keys.has(pattern) || pattern.endsWith('_keycenter')) return 'key';
  if (paths.has(pattern)) return 'path';
  if (type === 'integer') return whole.has(pattern) || pattern.includes('_curvecc') ? 'whole' : 'number';
  if (type === 'float') return 'number';
  if (options.length > 0) return 'option';
  return type === 'string' ? 'text' : 'any';
}
