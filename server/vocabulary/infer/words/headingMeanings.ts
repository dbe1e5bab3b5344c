import { readHeading } from '../../../trade/headings/headings';
import type { ColumnMeaning } from '../../../trade/meaning';
import type { InferredTarget } from './meaningRules';
import type { Meaning, NameUnit } from './meanings';

/** What a heading of zone tables says, as a target of places; what tables alone have is left out. */
const targets: Readonly<Partial<Record<ColumnMeaning, InferredTarget>>> = {
  sample: 'sample',
  group: 'group_name',
  pitch_keycenter: 'pitch_keycenter',
  key: 'key',
  lokey: 'lokey',
  hikey: 'hikey',
  key_range: 'key_range',
  lovel: 'lovel',
  hivel: 'hivel',
  velocity_range: 'velocity_range',
  tune: 'tune',
  transpose: 'transpose',
  volume: 'volume',
  attenuation: 'attenuation',
  pan: 'pan',
  loop: 'loop',
  loop_start: 'loop_start',
  loop_end: 'loop_end',
  loop_length: 'loop_length',
  offset: 'offset',
  end: 'end',
  seq_position: 'seq',
  seq_length: 'seq_length',
  trigger: 'trigger',
  mute_group: 'choke',
  off_by: 'off_by',
  keyswitch: 'sw_last',
  random: 'rand_range',
  delay_time: 'ampeg_delay',
  attack_time: 'ampeg_attack',
  hold_time: 'ampeg_hold',
  decay_time: 'ampeg_decay',
  sustain_level: 'ampeg_sustain',
  release_time: 'ampeg_release',
};

/**
 * What a place means where its name, with the elements that it stands in, is a heading of zone tables in any language;
 * `undefined` where it is none.
 */
export function headingMeaning(
  own: readonly string[],
  around: readonly (readonly string[])[],
): Meaning | undefined {
  const texts = [[...around.flat(), ...own], [...(around.at(-1) ?? []), ...own], own];
  for (const [at, words] of texts.entries()) {
    if (words.length === 0) continue;
    const reading = readHeading(words.join(' '));
    const target = reading && !reading.likeness ? targets[reading.meaning] : undefined;
    if (!reading || !target) continue;
    const unit: NameUnit | undefined = reading.unit === 'linear' ? 'ratio' : reading.unit;
    return { target, weight: at === 0 ? 0.88 : 0.8, unit };
  }
  return undefined;
}

/** Whether the name of a place says as a heading that it switches its element on, or off. */
export function switchHeading(words: readonly string[]): 'enabled' | 'disabled' | undefined {
  const meaning = readHeading(words.join(' '));
  if (!meaning || meaning.likeness) return undefined;
  return meaning.meaning === 'enabled' || meaning.meaning === 'disabled' ? meaning.meaning : undefined;
}
