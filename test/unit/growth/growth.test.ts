import { describe, expect, it } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import { headerSummaries, regionsToPlay } from '../../../server/features/codeLenses';
import { foldedLines } from '../../../server/features/folding';
import { formatDocument } from '../../../server/features/format';
import { inlayTexts } from '../../../server/features/inlayHints';
import { fileLinks } from '../../../server/features/navigation/links';
import { headerSymbols } from '../../../server/features/navigation/symbols';
import { namedPlaces } from '../../../server/features/navigation/workspaceSymbols';
import { allSafeEdits } from '../../../server/features/quickFixes';
import { refactorings } from '../../../server/features/refactor/refactorings';
import { renameVariable } from '../../../server/features/rename/rename';
import { semanticTokens } from '../../../server/features/semanticTokens';
import { buildMapScene } from '../../../server/map/scene';
import { usualFormatStyle } from '../../../server/model/formatStyle';
import type { Instrument } from '../../../server/model/instrument';
import type { Notation } from '../../../server/model/notation';
import { variablePlaces } from '../../../server/model/variables/variableUses';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { readHeading } from '../../../server/trade/headings/headings';
import { inferVocabulary } from '../../../server/vocabulary/infer/inferVocabulary';
import { conceptsOf } from '../../../server/vocabulary/infer/words/tradeWords';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { notations } from '../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { talkativeSamples } from '../edits/talkativeSamples';
import { readText } from '../features/anyInstrument';
import { putInto } from '../library/templates/putInto';
import { MemoryFiles } from '../workspace/memoryFiles';
import type { Sized } from './constructs';
import {
  sfzConstructs,
  tableConstructs,
  templateConstructs,
  unknownConstructs,
  xmlConstructs,
} from './constructs';
import { forgetWork, growthOf, workOf } from './countedWork';

const size = 64;
/**
 * Eight times as much text takes eight times the work, or a little more where something is sorted or only done from some
 * number on; work that grows with the square takes 64 times as much.
 */
const most = 30;
/** What runs less often is no burden, however it grows. */
const least = 20 * size;

const samples = new SampleStore(new MemoryFiles({}));

/** Everything that is asked of a whole instrument while it is open, checked, drawn, played or written. */
async function askAll(instrument: Instrument, notation: Notation): Promise<void> {
  const findings = checkInstrument({ instrument, notation, samples: talkativeSamples });
  allSafeEdits(findings, 0);
  const document = { notation, instrument, folder: '/music', samples };
  const { length } = instrument.sources[0].text;
  const symbols = headerSymbols(instrument);
  foldedLines(instrument.sources[0], symbols, []);
  semanticTokens(instrument);
  headerSummaries(instrument);
  regionsToPlay(instrument);
  inlayTexts(instrument, 0, length, { keyNames: true, effectiveValues: true });
  fileLinks(document);
  namedPlaces(instrument);
  buildMapScene(instrument);
  playableInstrument(instrument, { samples: talkativeSamples });
  formatDocument(document, usualFormatStyle);
  const [first] = variablePlaces(instrument);
  if (first) renameVariable([{ instrument, notation, notationOf: () => notation }], first.name, 'NEW');
  for (const directives of ['keep', 'inline'] as const) {
    notations.sfz.write(instrument, { directives });
    notations.xml.write(instrument, { directives });
  }
  for (const refactoring of refactorings) {
    const selected = { ...document, start: 0, end: length };
    if (refactoring.offer(selected)) await refactoring.make(selected);
  }
}

async function expectLinear(make: (size: number) => Sized, work: (sized: Sized) => unknown): Promise<void> {
  // What is learned once in a process is learned before, from a text of its own.
  await work(make(size / 2));
  const [small, large] = [make(size), make(8 * size)];
  forgetWork();
  const few = await workOf(() => work(small));
  const many = await workOf(() => work(large));
  expect(growthOf(few, many, most, least)).toEqual([]);
}

describe.each([
  ['sfz', sfzConstructs],
  ['xml', xmlConstructs],
] as const)('work on %s grows with the text:', (format, constructs) => {
  it.each(Object.entries(constructs))('%s', async (_name, make) => {
    await expectLinear(make, async ({ text, files }) => {
      await askAll(readText(format, text, files), notations[format]);
    });
  });
});

describe('work on a table grows with it:', () => {
  it.each(Object.entries(tableConstructs))('%s', async (_name, make) => {
    await expectLinear(make, ({ text }) => {
      looksLikeZoneTable(text);
      const { instrument } = readZoneTable(text);
      notations.sfz.write(instrument);
    });
  });
});

describe('work on a template grows with it:', () => {
  it.each(Object.entries(templateConstructs))('%s', async (_name, make) => {
    await expectLinear(make, ({ text }) => putInto(text, '<region> sample=b.wav key=60\n'));
  });
});

describe('work on XML of other names grows with it:', () => {
  it.each(Object.entries(unknownConstructs))('%s', async (_name, make) => {
    await expectLinear(make, async ({ text }) => {
      const inferred = inferVocabulary(text, { path: '/music/a.xml' });
      if (!inferred) return;
      const notation = vocabularyNotation(inferred.vocabulary);
      await askAll(notation.read(text, { path: '/music/a.xml' }), notation);
    });
  });
});

describe('what was learned of words', () => {
  it.each([
    ['headings', readHeading],
    ['names of places', conceptsOf],
  ] as const)('is used after thousands of others: %s', async (_name, read) => {
    for (let at = 0; at < 12_000; at++) read(`word${at}x`);
    forgetWork();
    const once = await workOf(() => read('lower branch'));
    const often = await workOf(() => {
      for (let times = 0; times < 500; times++) read('lower branch');
    });
    expect(growthOf(once, often, 3, 1000)).toEqual([]);
  });
});
