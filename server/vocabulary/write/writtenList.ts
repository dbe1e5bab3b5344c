import type { Instrument } from '../../model/instrument';
import type { WriteOptions } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { writeSamplePath } from '../forms/samplePath';
import { sampleListsOf } from '../read/usedSamples';
import type { SampleListPlace, ValueForm, Vocabulary } from '../vocabulary';
import { sourceValue } from './writeOwnValues';

/** An entry of a list of samples: its key, and the path as it is written. */
export interface WrittenListEntry {
  key: string;
  path: string;
}

/** A list of the samples of an instrument that is written with it. */
export interface WrittenList {
  place: SampleListPlace;
  entries: readonly WrittenListEntry[];
  /** The form of a path with the keys of the entries in it; other forms are answered as they are. */
  formThere: (form: ValueForm) => ValueForm;
}

/** The key of an entry: its position where that is referred to, and a number where the keys are such. */
function keyAt({ key, first }: SampleListPlace, position: number): string {
  if (key.startsWith('#')) return String(position + Number(key.slice(1)));
  return first === undefined ? `s${position + 1}` : String(position + Number(first));
}

/**
 * The list that the samples of an instrument go into where a vocabulary keeps them in one, with keys `s1`, `s2`, or numbers, in the order of
 * their use; `undefined` where it keeps none.
 */
export function writtenListOf(
  instrument: Instrument,
  vocabulary: Vocabulary,
  { move, leaveOut }: Pick<WriteOptions, 'move' | 'leaveOut'>,
): WrittenList | undefined {
  const [place] = sampleListsOf(vocabulary);
  if (!place) return undefined;
  const keys = new Map<string, string>();
  for (const region of instrument.regions) {
    if (leaveOut?.has(region)) continue;
    const parameter = instrument.effective(region, Parameter.sample);
    const path = parameter < 0 ? '' : sourceValue(instrument, parameter, region, move);
    if (path !== '' && !keys.has(path)) keys.set(path, keyAt(place, keys.size));
  }
  const entries: WrittenListEntry[] = [];
  const words = new Map<ValueForm, ValueForm>();
  const wordsOf = (form: Extract<ValueForm, { kind: 'path' }>): ValueForm => {
    const { list: _, ...rest } = form;
    const written: Record<string, string> = Object.create(null);
    for (const [path, key] of keys) {
      const text = writeSamplePath(rest, path);
      if (text === undefined) continue;
      written[key] = path;
      if (!entries.some((one) => one.key === key)) entries.push({ key, path: text });
    }
    return { kind: 'words', words: written };
  };
  for (const { parameters } of vocabulary.levels) {
    for (const { form } of parameters) if (form.kind === 'path' && form.list) words.set(form, wordsOf(form));
  }
  return { place, entries, formThere: (form) => words.get(form) ?? form };
}
