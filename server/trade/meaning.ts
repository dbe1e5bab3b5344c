/** What a column of a zone table can hold. Names of the open SFZ format where it has one for the same thing. */
export type ColumnMeaning =
  | 'sample'
  | 'group'
  | 'pitch_keycenter'
  | 'key'
  | 'lokey'
  | 'hikey'
  | 'key_range'
  | 'lovel'
  | 'hivel'
  | 'velocity_range'
  | 'dynamics'
  | 'tune'
  | 'transpose'
  | 'volume'
  | 'attenuation'
  | 'pan'
  | 'loop'
  | 'loop_start'
  | 'loop_end'
  | 'loop_length'
  | 'offset'
  | 'end'
  | 'length'
  | 'seq_position'
  | 'seq_length'
  | 'trigger'
  | 'mute_group'
  | 'off_by'
  | 'mutes'
  | 'keyswitch'
  | 'key_count'
  | 'deviation'
  | 'random'
  | 'fade_in'
  | 'fade_out'
  | 'envelope'
  | 'delay_time'
  | 'attack_time'
  | 'hold_time'
  | 'decay_time'
  | 'sustain_level'
  | 'release_time'
  | 'sample_rate'
  | 'enabled'
  | 'disabled'
  | 'comment'
  | 'row_number'
  | 'unknown';

/** The meanings in words for people. */
export const meaningNames: Readonly<Record<ColumnMeaning, string>> = {
  sample: 'sample file',
  group: 'group',
  pitch_keycenter: 'root key',
  key: 'key',
  lokey: 'low key',
  hikey: 'high key',
  key_range: 'key range',
  lovel: 'low velocity',
  hivel: 'high velocity',
  velocity_range: 'velocity range',
  dynamics: 'dynamics',
  tune: 'fine tuning',
  transpose: 'coarse tuning',
  volume: 'level',
  attenuation: 'attenuation',
  pan: 'pan',
  loop: 'loop',
  loop_start: 'loop start',
  loop_end: 'loop end',
  loop_length: 'loop length',
  offset: 'sample start',
  end: 'sample end',
  length: 'length of the piece',
  seq_position: 'round robin position',
  seq_length: 'round robin length',
  trigger: 'trigger',
  mute_group: 'mute group',
  off_by: 'group that silences it',
  mutes: 'group that it silences',
  keyswitch: 'key switch',
  key_count: 'number of keys',
  deviation: 'pitch deviation',
  random: 'random alternative',
  fade_in: 'fade-in',
  fade_out: 'fade-out',
  envelope: 'envelope',
  delay_time: 'envelope delay',
  attack_time: 'envelope attack',
  hold_time: 'envelope hold',
  decay_time: 'envelope decay',
  sustain_level: 'envelope sustain',
  release_time: 'envelope release',
  sample_rate: 'sample rate',
  enabled: 'used or not',
  disabled: 'switched off or not',
  comment: 'comment',
  row_number: 'row number',
  unknown: 'not understood',
};

/** The meanings of columns that hold keys. */
export const keyMeanings: readonly ColumnMeaning[] = [
  'pitch_keycenter',
  'key',
  'lokey',
  'hikey',
  'key_range',
];

/** What positions in a sample mean. */
export const positionMeanings: readonly ColumnMeaning[] = [
  'loop',
  'loop_start',
  'loop_end',
  'loop_length',
  'offset',
  'end',
  'length',
];

/** Units that stand in a heading or behind a number. */
export type Unit =
  | 'dB'
  | 'centibels'
  | 'cents'
  | 'semitones'
  | 'percent'
  | 'linear'
  | 'frames'
  | 'ms'
  | 's'
  | 'Hz'
  | 'kHz';
