import assert from 'node:assert/strict';
import fc from 'fast-check';
import { checkInstrument } from '../../server/checks/checkInstrument';
import { headerSummaries } from '../../server/features/codeLenses';
import { completionsAt } from '../../server/features/completion/completion';
import { hoverAt } from '../../server/features/hover/hover';
import { inlayTexts } from '../../server/features/inlayHints';
import { definitionAt } from '../../server/features/navigation/definition';
import { highlightsAt } from '../../server/features/navigation/highlights';
import { fileLinks } from '../../server/features/navigation/links';
import { headerSymbols } from '../../server/features/navigation/symbols';
import { selectionsAt } from '../../server/features/selectionRanges';
import { semanticTokens } from '../../server/features/semanticTokens';
import { buildMapScene } from '../../server/map/scene';
import type { Instrument } from '../../server/model/instrument';
import type { Notation } from '../../server/model/notation';
import { playableInstrument } from '../../server/playing/playable/makePlayable';
import { createPlayer } from '../../server/playing/player/createPlayer';
import { inferVocabulary } from '../../server/vocabulary/infer/inferVocabulary';
import { vocabularyNotation } from '../../server/vocabulary/vocabularyNotation';
import { notations } from '../../server/workspace/notations/notationOf';
import { SampleStore } from '../../server/workspace/samples/sampleStore';
import { anyTexts } from '../unit/edits/anyTexts';
import { talkativeSamples } from '../unit/edits/talkativeSamples';
import type { Format } from '../unit/features/anyInstrument';
import { readText } from '../unit/features/anyInstrument';
import { examples } from '../unit/vocabulary/examples';
import { MemoryFiles } from '../unit/workspace/memoryFiles';
import { anyText } from '../unit/xml/anyXml';
import { damaged, damages } from './damage';
import { target } from './target';

const noSamples = new SampleStore(new MemoryFiles({}));

/** Asks everything of an instrument and of a place in its text; fails where something throws or speaks of what is not there. */
async function expectAnswers(instrument: Instrument, notation: Notation, offset: number): Promise<void> {
  const lengths = instrument.sources.map(({ text }) => text.length);
  for (const finding of checkInstrument({ instrument, notation, samples: talkativeSamples })) {
    assert(finding.start <= finding.end && finding.end <= (lengths[finding.source] ?? -1), finding.code);
    assert(!/stopped with an error/.test(finding.message), finding.message);
  }
  const document = { notation, instrument, folder: '/music', samples: noSamples };
  const context = { document, instrument, folder: '/music', source: 0 };
  notation.placeAt(instrument, offset);
  await hoverAt(document, offset);
  await completionsAt(document, offset);
  await definitionAt(context, noSamples, offset);
  highlightsAt(context, offset);
  selectionsAt(document, offset);
  headerSymbols(instrument);
  semanticTokens(instrument);
  headerSummaries(instrument);
  inlayTexts(instrument, 0, lengths[0] ?? 0, { keyNames: true, effectiveValues: true });
  fileLinks(document);
  const scene = buildMapScene(instrument);
  const shown = scene.shapes.reduce((sum, { regions }) => sum + regions.length, 0) + scene.unplaced.length;
  assert.equal(shown, instrument.regions.length, 'regions in the map');
  const player = createPlayer(playableInstrument(instrument, { samples: talkativeSamples }));
  player.noteOn(60, 100, 0);
  player.controller(64, 127, 0.1);
  player.noteOff(60, 64, 0.2);
  let seen = 0;
  player.lookAt({ key: 61, velocity: 1, timeSeconds: 0.3 }, () => seen++);
  assert.equal(seen, instrument.regions.length, 'regions explained');
}

function instrumentTexts(format: Format) {
  const texts = fc.oneof(
    { weight: 3, arbitrary: anyTexts[format] },
    { weight: 1, arbitrary: anyText.map((main) => ({ main, files: {} })) },
  );
  return target(
    `reading ${format}`,
    'texts',
    fc.record({ texts, list: damages, from: fc.nat() }),
    async ({ texts: { main, files }, list, from }) => {
      const text = damaged(main, list);
      await expectAnswers(readText(format, text, files), notations[format], from % (text.length + 1));
    },
  );
}

/** The first regions of texts in vocabularies of other names, so that one takes no longer than others. */
const shortExamples = Object.values(examples).map(({ text }) => text.slice(0, 6000));

/** Reading, checks, features, the map and what plays answer for every text. */
export const readingTargets = [
  instrumentTexts('sfz'),
  instrumentTexts('xml'),
  target(
    'vocabularies',
    'texts',
    fc.record({ text: fc.constantFrom(...shortExamples), list: damages, from: fc.nat() }),
    async ({ text: whole, list, from }) => {
      const text = damaged(whole, list);
      const inferred = inferVocabulary(text, { path: '/music/a.xml' });
      if (!inferred) return;
      const notation = vocabularyNotation(inferred.vocabulary);
      const instrument = notation.read(text, { path: '/music/a.xml' });
      await expectAnswers(instrument, notation, from % (text.length + 1));
    },
  ),
];
