import { Generator, withinRange } from '../generators';
import { centsOfHertz } from '../units';
import type { RegionParameters } from './regionParameters';
import type { ZoneDraft } from './zoneDraft';

const openFilter = 13500;

/** Opcodes of a filter that do nothing where there is none. */
const filterOnly = ['fil_type', 'resonance', 'fil_keytrack', 'fil_keycenter', 'fil_veltrack', 'fileg_depth'];

/**
 * Puts the filter of a region into a zone. A SoundFont has one low pass of two poles, which also takes half its resonance
 * from all that it lets through; the level makes up for that.
 */
export function putFilter(values: RegionParameters, zone: ZoneDraft): void {
  const cutoff = values.number('cutoff', Number.NaN);
  if (Number.isNaN(cutoff) || cutoff <= 0) {
    values.use(...filterOnly);
    return;
  }
  const type = values.word('fil_type') ?? 'lpf_2p';
  if (type !== 'lpf_2p' && type !== 'lpf_1p') {
    values.tell(
      'fil_type',
      'dropped',
      `Left out: the filter; a SoundFont has a low pass alone, and this is ${type}.`,
    );
    values.tell('cutoff', 'dropped', 'Left out with its filter, which a SoundFont does not have.');
    values.use(...filterOnly);
    return;
  }
  if (type === 'lpf_1p')
    values.tell(
      'fil_type',
      'approximated',
      'A SoundFont has a low pass of two poles, which is steeper than that of one.',
    );
  const cents = centsOfHertz(cutoff);
  zone.generators.set(Generator.filterCutoff, withinRange(Generator.filterCutoff, cents));
  if (cents !== withinRange(Generator.filterCutoff, cents) && cents < openFilter)
    values.tell('cutoff', 'approximated', 'The filter of a SoundFont goes no lower than 19 Hz.');
  const resonance = withinRange(Generator.filterResonance, Math.round(10 * values.number('resonance', 0)));
  if (resonance === 0) return;
  zone.generators.set(Generator.filterResonance, resonance);
  zone.levelDb += resonance / 20;
  values.tell(
    'resonance',
    'approximated',
    'Players of SoundFonts differ in what a resonance does to the level; what the format takes away is added again.',
  );
}
