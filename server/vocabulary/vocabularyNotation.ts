import type { Instrument } from '../model/instrument';
import type { Notation, ReadOptions, SampleFactsLookup } from '../model/notation';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { countEdits, countPlaces } from './edit/childCounts';
import { differingIn } from './edit/differingValues';
import { editInVocabulary } from './edit/editVocabularyXml';
import { insertInVocabulary } from './edit/insertElements';
import { samplePlacesIn } from './edit/samplePlaces';
import { headersIn, parametersIn, spellingIn } from './edit/spellingVocabulary';
import { isStandIn } from './places';
import { placeInVocabulary } from './read/placeInVocabulary';
import { readVocabularyXmlInSteps } from './read/readVocabularyXml';
import { unreadValues } from './read/unreadValues';
import type { Vocabulary } from './vocabulary';
import { layOutInVocabulary } from './write/layOutVocabularyXml';
import { scaleEndIn } from './write/scaleEnds';
import { writeInVocabulary, writeInVocabularyInSteps } from './write/writeVocabularyXml';

const notations = new WeakMap<Vocabulary, Notation>();

/** Instrument XML in a vocabulary as a notation of the instrument model; the same for the same object. */
export function vocabularyNotation(vocabulary: Vocabulary): Notation {
  let notation = notations.get(vocabulary);
  if (!notation) {
    notation = newNotation(vocabulary);
    notations.set(vocabulary, notation);
  }
  return notation;
}

function newNotation(vocabulary: Vocabulary): Notation {
  const readXml = readVocabularyXmlInSteps(vocabulary);
  const written = withoutStandIns(vocabulary);
  /** What was known of the samples when an instrument was read: positions are written as they were read. */
  const sampleFacts = new WeakMap<Instrument, SampleFactsLookup>();
  function* readInSteps(text: string, options: ReadOptions): Steps<Instrument> {
    const instrument = yield* readXml(text, options);
    if (options.sampleFacts) sampleFacts.set(instrument, options.sampleFacts);
    return instrument;
  }
  return {
    format: 'xml',
    read: (text, options) => finish(readInSteps(text, options)),
    readInSteps,
    placeAt: placeInVocabulary(vocabulary),
    edit: editInVocabulary(written, (instrument) => sampleFacts.get(instrument)),
    insertInSteps: (instrument, offset, inserted) =>
      insertInVocabulary(written, instrument, offset, inserted, sampleFacts.get(instrument)),
    write: writeInVocabulary(written),
    writeInSteps: writeInVocabularyInSteps(written),
    layOut: layOutInVocabulary,
    spelling: spellingIn(written),
    ...sampleFolder(vocabulary),
    samplePlaces: samplePlacesIn(vocabulary),
    countEdits: (before, after) => countEdits(vocabulary, before, after),
    unread: (instrument, except = new Set()) =>
      unreadValues(
        instrument,
        vocabulary,
        new Set([...countPlaces(vocabulary, instrument.sources[0]?.text ?? ''), ...except]),
      ),
    differing: differingIn(vocabulary),
    headers: headersIn(vocabulary),
    parameters: (kind, at) => parametersIn(written, kind, at),
    scaleEnd: scaleEndIn(written),
  };
}

/** A vocabulary without the values that are read and not written; the same where there are none. */
function withoutStandIns(vocabulary: Vocabulary): Vocabulary {
  const { levels } = vocabulary;
  if (!levels.some(({ parameters }) => parameters.some((one) => isStandIn(one, parameters))))
    return vocabulary;
  return {
    ...vocabulary,
    levels: levels.map((level) => ({
      ...level,
      parameters: level.parameters.filter((one) => !isStandIn(one, level.parameters)),
    })),
  };
}

function sampleFolder({ levels }: Vocabulary): Pick<Notation, 'sampleFolder'> {
  const form = levels[levels.length - 1]?.parameters.find(({ parameter }) => parameter === 'sample')?.form;
  const folder = form?.kind === 'path' ? form.folder?.replace(/[\\/]+$/, '') : undefined;
  return folder === undefined || folder === '' ? {} : { sampleFolder: folder };
}
