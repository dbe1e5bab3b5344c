import { saidMeanings } from '../../headings/saidMeanings';
import { wordsOf } from '../../languages/spelling';
import { unitByStem } from '../../languages/unitStems';
import type { ColumnMeaning, Unit } from '../../meaning';
import { brackets } from '../bracketsCount';

/** What the text says that values in brackets are. */
export interface BracketValues {
  meaning: 'volume' | 'attenuation' | 'tune' | 'transpose' | 'pan';
  unit: Unit | undefined;
  text: string;
}

const meanings: ReadonlySet<ColumnMeaning> = new Set(['volume', 'attenuation', 'tune', 'transpose', 'pan']);
const ofUnit: Readonly<Partial<Record<Unit, BracketValues['meaning']>>> = {
  dB: 'volume',
  cents: 'tune',
  semitones: 'transpose',
};
const sentences = /[.!?;](?=\s|$)|[\n\r]/u;
const longest = 2000;

/** What some texts say of the values in brackets: `in brackets: level in dB`; `undefined` where they say nothing of them. */
export function bracketValuesIn(texts: readonly string[]): BracketValues | undefined {
  for (const whole of texts) {
    for (const sentence of whole.slice(0, longest).split(sentences)) {
      if (!brackets.test(sentence)) continue;
      const words = sentence.match(/[\p{L}\p{M}%]+/gu) ?? [];
      const unit = words
        .filter((word) => word.length > 1 || word === '%')
        .map(unitByStem)
        .find((one) => one !== undefined);
      const said = meaningIn(wordsOf(sentence)) ?? (unit && ofUnit[unit]);
      if (said) return { meaning: said, unit, text: sentence.trim() };
    }
  }
  return undefined;
}

function meaningIn(words: readonly string[]): BracketValues['meaning'] | undefined {
  for (const meaning of saidMeanings(words)) if (isOfBrackets(meaning)) return meaning;
  return undefined;
}

function isOfBrackets(meaning: ColumnMeaning): meaning is BracketValues['meaning'] {
  return meanings.has(meaning);
}
