import type { Instrument } from '../../model/instrument';
import type { ReadOptions } from '../../model/notation';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { scanXmlInSteps } from '../../xml/scan/scan';
import type { Vocabulary } from '../vocabulary';
import { chanceValues } from './chances';
import { compileVocabulary } from './compile';
import type { LateValues } from './entries';
import { orderedKeys } from './orderedKeys';
import { VocabularyReader } from './reader';
import { rootedKeys } from './rootedKeys';
import { SampleLists } from './sampleList';
import type { StepValue } from './steps';
import { stepsIn } from './steps';
import { switchedOffIn } from './switchedOff';
import { takesIn, takeValues } from './takes';
import type { RobinTurn } from './turns';
import { turnCounts } from './turns';

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
  const read = readVocabularyXmlInSteps(vocabulary);
  return (text, options) => finish(read(text, options));
}

/** As {@link readVocabularyXml}, in steps. */
export function readVocabularyXmlInSteps(
  vocabulary: Vocabulary,
): (text: string, options: ReadOptions) => Steps<Instrument> {
  const compiled = compileVocabulary(vocabulary);
  return function* (text, options) {
    const off = compiled.off.length > 0 ? yield* switchedOffIn(text, compiled.off) : undefined;
    // What regions refer to stands anywhere in the text; it is looked through once for all readings.
    const lists = new SampleLists(text);
    yield* lists.readAll(compiled.targets);
    let reader = new VocabularyReader(compiled, text, options, lists, off);
    yield* scanXmlInSteps(text, reader);
    let late: LateValues | undefined;
    if (reader.hasLateValues) {
      // Values of a group that stand behind its regions are known only now.
      late = reader.lateValues();
      reader = new VocabularyReader(compiled, text, options, lists, off, late);
      yield* scanXmlInSteps(text, reader);
    }
    const instrument = reader.finish();
    // Late values go by the numbers of headers, which change where elements are passed over.
    const ordered = compiled.isOrdered ? orderedKeys(instrument, late === undefined) : undefined;
    const steps =
      ordered?.values ??
      (compiled.isRooted ? rootedKeys(instrument) : undefined) ??
      (compiled.stepEnds.length > 0 ? stepsIn(instrument, compiled.stepEnds) : undefined);
    const passed = new Map([...(off ?? []), ...(ordered?.passed ?? [])]);
    const readAgain = function* (
      turns?: ReadonlyMap<number, RobinTurn>,
      values: ReadonlyMap<number, readonly StepValue[]> | undefined = steps,
    ): Steps<Instrument> {
      const again = new VocabularyReader(compiled, text, options, lists, passed, late, turns, values);
      yield* scanXmlInSteps(text, again);
      return again.finish();
    };
    // Regions take turns where they have the same keys, which steps tell.
    const whole = steps && steps.size > 0 ? yield* readAgain() : instrument;
    if (compiled.takes.length > 0 || compiled.chances) {
      const taken = new Map<number, readonly StepValue[]>(steps ?? []);
      for (const [region, values] of takeValues(whole, yield* takesIn(text, compiled.takes)))
        taken.set(region, [...(taken.get(region) ?? []), ...values]);
      const byChance = compiled.chances && (yield* chanceValues(text, whole, compiled.chances));
      for (const [region, values] of byChance ?? [])
        taken.set(region, [...(steps?.get(region) ?? []), ...values]);
      const others = new Map(compiled.lacksTurns ? turnCounts(whole, compiled.turn !== undefined) : []);
      for (const region of taken.keys()) others.delete(region);
      return yield* readAgain(others, taken);
    }
    const turns = compiled.lacksTurns ? turnCounts(whole, compiled.turn !== undefined) : undefined;
    return turns && (turns.size > 0 || compiled.turn) ? yield* readAgain(turns) : whole;
  };
}
