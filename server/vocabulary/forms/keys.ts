import { frequencyOfKey, keyOfFrequency } from '../../model/keys';
import { decimalText } from '../../model/text/decimalText';
import { readKey as readTableKey } from '../../trade/readings/keyReading';
import { readLinedKey, writeLinedKey } from '../../trade/readings/linedKeys';
import type { ValueForm } from '../vocabulary';
import { readNumberText } from './numberText';

type Key = Extract<ValueForm, { kind: 'key' }>;

/** Semitones above C of the letters A to G. */
const naturals = [9, 11, 0, 2, 4, 5, 7] as const;
const germanNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'B', 'H'] as const;
const syllables = ['do', 'do#', 're', 're#', 'mi', 'fa', 'fa#', 'sol', 'sol#', 'la', 'la#', 'si'] as const;
const sharpNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'] as const;
const noteName = /^([A-G])\s*([#♯b♭]{0,2})\s*([-\u2212]?\d{1,2})$/i;

/** The octave that starts with key 0, by the name of key 60, which is five octaves above it (ISO 16 names none; makers differ). */
const lowestOctave = { C3: -2, C4: -1, C5: 0 } as const;

/** The key, 0..127, of a text that is a number, also a hexadecimal one such as `0x3C`, or a note name, also `Cis`, `H` or `sol` where the naming says so; −1 for the number of no key. `undefined` for other text. */
export function readKeyForm(form: Key, text: string): number | undefined {
  const { middleC = 'C4', naming, offset = 0 } = form;
  const number = readNumberText(text);
  if (form.written === 'frequency' && number && /^(?:hz)?$/i.test(number.unit))
    return nearestKey(number.number);
  if (number?.unit === '') return keyOfNumber(number.number, offset);
  if (naming === 'lines' || naming === 'german lines') {
    const key = readLinedKey(text, naming === 'german lines' ? 'german' : 'english');
    if (key !== undefined) return keyOfNumber(key, 0);
  }
  if (naming !== undefined) {
    const key = readTableKey(text, naming.startsWith('german') ? 'german' : undefined);
    if (key?.number !== undefined) return keyOfNumber(key.number, offset);
    return key?.named === undefined
      ? undefined
      : keyOfNumber(key.named - 12 * (lowestOctave[middleC] + 1), 0);
  }
  const found = noteName.exec(text.trim());
  if (!found) {
    // With its number beside its name: `C1 (36)`.
    const both = readTableKey(text);
    return both?.number === undefined ? undefined : keyOfNumber(both.number, offset);
  }
  const [, letter = '', signs = '', octave = ''] = found;
  let key = naturals[(letter.charCodeAt(0) | 32) - 97] as number;
  for (const sign of signs) key += sign === '#' || sign === '♯' ? 1 : -1;
  key += 12 * (Number(octave.replace('\u2212', '-')) - lowestOctave[middleC]);
  return key >= 0 && key <= 127 ? key : undefined;
}

/** The key whose frequency is nearest to one in Hz; `undefined` beyond the keys. */
export function nearestKey(hertz: number): number | undefined {
  return hertz > 0 ? keyOfNumber(Math.round(keyOfFrequency(hertz)), 0) : undefined;
}

/** The key of a written number; `undefined` where it is no key. */
export function keyOfNumber(written: number, offset: number): number | undefined {
  const key = written - offset;
  return Number.isInteger(key) && key >= -1 && key <= 127 ? key : undefined;
}

/** The names of the twelve keys from C where a document has none of its own. */
export function defaultNoteNames(naming: Key['naming']): readonly string[] {
  return naming === 'german' ? germanNames : naming === 'syllables' ? syllables : sharpNames;
}

/** How a key is written: −1, which is no key, always as a number. */
export function writeKeyForm(
  { written, middleC = 'C4', naming, names, offset = 0 }: Key,
  key: number,
): string {
  // Thousandths of a Hz tell the lowest keys apart.
  if (written === 'frequency' && key >= 0) return decimalText(Math.round(frequencyOfKey(key) * 1000) / 1000);
  if (written === 'number' || key < 0) return String(key + offset);
  if (written === 'hexadecimal' && key + offset >= 0)
    return `0x${(key + offset).toString(16).toUpperCase().padStart(2, '0')}`;
  if (naming === 'lines' || naming === 'german lines') return writeLinedKey(key, naming === 'german lines');
  const own = names?.split(' ');
  return `${(own ?? defaultNoteNames(naming))[key % 12]}${Math.floor(key / 12) + lowestOctave[middleC]}`;
}
