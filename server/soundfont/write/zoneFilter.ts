import { Generator, withinRange } from '../generators';
import { centsOfHertz } from '../units';
import type { RegionParameters } from './regionParameters';
import type { ZoneDraft } from './zoneDraft';

const openFilter = 13500;

/** Opcodes that do nothing where there is no filter. */
const filterOnly = /^(?:resonance|fil_(?!gain)|fileg_|fillfo_|(?:cutoff|resonance)_)/;

/**
 * Puts the filter of a region into a zone. A SoundFont has one low pass of two poles, which also takes half its resonance
 * from all that it lets through; the level makes up for that.
 */
export function putFilter(values: RegionParameters, zone: ZoneDraft): void {
  const cutoff = values.number('cutoff', Number.NaN);
  if (Number.isNaN(cutoff) || cutoff <= 0) {
    useFilterOnly(values);
    return;
  }
  const type = values.word('fil_type') ?? 'lpf_2p';
  if (type !== 'lpf_2p' && type !== 'lpf_1p') {
    values.tell(
      'fil_type',
      'dropped',
      `Left out: the filter; a SoundFont has only a low pass, and this is ${type}.`,
    );
    values.tell('cutoff', 'dropped', 'Left out with its filter, which a SoundFont does not have.');
    useFilterOnly(values);
    return;
  }
  if (type === 'lpf_1p')
    values.tell(
      'fil_type',
      'approximated',
      'A SoundFont has a low pass of two poles, which is steeper than that of one.',
    );
  zone.hasFilter = true;
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

function useFilterOnly(values: RegionParameters): void {
  values.use(...values.matching(filterOnly).map(({ name }) => name));
}
