import { bareWord } from '../languages/spelling';
import type { ColumnMeaning } from '../meaning';

/**
 * Fields that published formats name in a way of their own, as programs print them when they show what a file holds: generators of SoundFont
 * (SoundFont Technical Specification 2.04, 8.1.2), the chunks `inst` and `smpl` of RIFF WAVE (New Multimedia Data Types, 1994), and `wsmp`
 * and `rgnh` of DLS (Downloadable Sounds 1.1b, 2.3 and 2.4).
 */
const fields: ReadonlyMap<string, ColumnMeaning> = new Map([
  ['sampleid', 'sample'],
  ['overridingrootkey', 'pitch_keycenter'],
  ['samplemodes', 'loop'],
  ['unshiftednote', 'pitch_keycenter'],
  ['bunshiftednote', 'pitch_keycenter'],
  ['chfinetune', 'tune'],
  ['chgain', 'volume'],
  ['blownote', 'lokey'],
  ['bhighnote', 'hikey'],
  ['blowvelocity', 'lovel'],
  ['bhighvelocity', 'hivel'],
  ['dwmidiunitynote', 'pitch_keycenter'],
  ['usunitynote', 'pitch_keycenter'],
  ['uskeygroup', 'mute_group'],
]);

/** What a field of a published format holds, by its name there; `undefined` for any other name. */
export function standardField(name: string): ColumnMeaning | undefined {
  return fields.get(bareWord(name));
}
