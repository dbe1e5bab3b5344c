import { replacing } from '../../model/editing/edits';
import type { Instrument } from '../../model/instrument';
import type { Change, Edited, SampleFactsLookup } from '../../model/notation';
import { finish } from '../../model/steps';
import { wholeLine } from '../../model/text/textLines';
import type { Vocabulary } from '../vocabulary';
import { canonicalNameOf, placesOf } from '../write/writePlaces';
import { groupInVocabulary } from './editGroup';
import { elementIn, headerText } from './editHeader';
import { changeValues, refused } from './editValues';
import { insertInVocabulary } from './insertElements';

/** The text edits that make a change in instrument XML in a vocabulary, in the style of the text around; see `Notation.edit`. */
export function editInVocabulary(
  vocabulary: Vocabulary,
  sampleFactsOf: (instrument: Instrument) => SampleFactsLookup | undefined = () => undefined,
): (instrument: Instrument, change: Change) => Edited {
  return (instrument, change) => {
    const sampleFacts = sampleFactsOf(instrument);
    const values = (header: number, changes: { name: string; value: string | undefined }[]) =>
      changeValues(instrument, vocabulary, header, changes, sampleFacts);
    switch (change.kind) {
      case 'set':
        return values(change.header, [{ name: change.name, value: change.value }]);
      case 'remove':
        return values(instrument.headerOfParameter(change.parameter), [
          { name: nameOf(instrument, change.parameter), value: undefined },
        ]);
      case 'rename':
        return rename(instrument, change.parameter, change.name, values);
      case 'removeHeader':
        return removeHeader(instrument, vocabulary, change.header, values);
      case 'insert':
        return finish(
          insertInVocabulary(vocabulary, instrument, change.offset, change.instrument, sampleFacts),
        );
      case 'revise':
        return values(change.header, [
          ...change.remove.map((parameter) => ({ name: nameOf(instrument, parameter), value: undefined })),
          ...change.add,
        ]);
      case 'group':
        return groupInVocabulary(vocabulary, instrument, change, sampleFacts);
      case 'define':
        return refused(instrument, -1, 'Instruments of this kind have no variables, so nothing was changed.');
      case 'moveOut':
      case 'inline':
        return refused(instrument, -1, 'Instruments of this kind include no files, so nothing was changed.');
    }
  };
}

type ChangeHeaderValues = (header: number, changes: { name: string; value: string | undefined }[]) => Edited;

function nameOf(instrument: Instrument, parameter: number): string {
  return instrument.names.text(instrument.canonicalName(parameter));
}

function rename(instrument: Instrument, parameter: number, name: string, values: ChangeHeaderValues): Edited {
  const before = nameOf(instrument, parameter);
  if (canonicalNameOf(name) === before) return { edits: [], notes: [] };
  return values(instrument.headerOfParameter(parameter), [
    { name: before, value: undefined },
    { name, value: instrument.valueText(parameter) },
  ]);
}

/** Takes a region out; of an element that holds others its own values alone, since these stay. */
function removeHeader(
  instrument: Instrument,
  vocabulary: Vocabulary,
  header: number,
  values: ChangeHeaderValues,
): Edited {
  const found = headerText(instrument, vocabulary, header);
  const within = found && elementIn(found);
  if (!within)
    return refused(instrument, header, 'This is no element of the vocabulary, so nothing was changed.');
  const inner = placesOf(vocabulary)[found.level + 1]?.level;
  const holdsOthers =
    inner !== undefined &&
    within.element.children.some(({ name }) => name === inner.element || inner.inside?.includes(name));
  if (!holdsOthers) {
    const body = instrument.bodySpan(header);
    const text = instrument.sources[body.source]?.text ?? '';
    return { edits: [replacing(wholeLine(text, body), '')], notes: [] };
  }
  const names = new Set<string>();
  for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++) {
    names.add(nameOf(instrument, one));
  }
  return values(
    header,
    [...names].map((name) => ({ name, value: undefined })),
  );
}
