import type { VariantChoice } from '../../playing/plain/waysOfPlaying';
import type { RegionParameters } from './regionParameters';

/** Notes what becomes of round robins, random choices and keyswitches. */
export function tellVariants(values: RegionParameters, choice: VariantChoice): void {
  const takes =
    choice.takes === 'first'
      ? 'Left out: a SoundFont knows no round robins or random choices; only the first take is written.'
      : 'A SoundFont knows no round robins or random choices; each take is a preset of its own.';
  const kind = choice.takes === 'first' ? 'dropped' : 'approximated';
  for (const name of ['seq_length', 'seq_position', 'lorand', 'hirand']) values.tell(name, kind, takes);
  const switches =
    choice.keyswitches === 'first'
      ? 'Left out: a SoundFont knows no keyswitches; only what sounds at first is written.'
      : 'A SoundFont knows no keyswitches; what each of them chooses is a preset of its own.';
  for (const name of ['sw_last', 'sw_lolast', 'sw_hilast', 'sw_default'])
    values.tell(name, choice.keyswitches === 'first' ? 'dropped' : 'approximated', switches);
  values.use('sw_lokey', 'sw_hikey', 'sw_label');
}
