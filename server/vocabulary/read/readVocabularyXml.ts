import type { Instrument } from '../../model/instrument';
import type { ReadOptions } from '../../model/notation';
import { scanXml } from '../../xml/scan/scan';
import type { Vocabulary } from '../vocabulary';
import { compileVocabulary } from './compile';
import type { LateValues } from './entries';
import { VocabularyReader } from './reader';
import { turnsIn } from './turns';

/**
 * Reads instrument XML in a vocabulary. Never throws: what makes no sense is among the findings and sets no parameter; what the
 * vocabulary does not know, and empty texts, are passed over. The name of a parameter stands at its attribute, at the element
 * whose text it is (empty, behind the tag, if attributes of it mean something as well), or, where an attribute of the element
 * says what another one means, at the value of that attribute.
 * Parameters of one header are in the order of their names; those of a group may stand behind its regions.
 */
export function readVocabularyXml(
  vocabulary: Vocabulary,
): (text: string, options: ReadOptions) => Instrument {
  const compiled = compileVocabulary(vocabulary);
  return (text, options) => {
    let reader = new VocabularyReader(compiled, text, options);
    scanXml(text, reader);
    let late: LateValues | undefined;
    if (reader.hasLateValues) {
      // Values of a group that stand behind its regions are known only now.
      late = reader.lateValues();
      reader = new VocabularyReader(compiled, text, options, late);
      scanXml(text, reader);
    }
    const instrument = reader.finish();
    const turns = compiled.lacksTurns ? turnsIn(instrument) : undefined;
    if (!turns || turns.size === 0) return instrument;
    const again = new VocabularyReader(compiled, text, options, late, turns);
    scanXml(text, again);
    return again.finish();
  };
}
