import assert from 'node:assert/strict';
import fc from 'fast-check';
import { checkInstrument } from '../../server/checks/checkInstrument';
import { formatDocument, formatRange } from '../../server/features/format';
import { allSafeEdits } from '../../server/features/quickFixes';
import { refactorings } from '../../server/features/refactor/refactorings';
import { renameVariable } from '../../server/features/rename/rename';
import { editedText, readEdited } from '../../server/model/editing/changedInstrument';
import { joinEdits } from '../../server/model/editing/edits';
import type { TextEdit } from '../../server/model/finding';
import { usualFormatStyle } from '../../server/model/formatStyle';
import type { Instrument } from '../../server/model/instrument';
import { standingIn } from '../../server/model/text/span';
import { variablePlaces } from '../../server/model/variables/variableUses';
import { notations } from '../../server/workspace/notations/notationOf';
import { SampleStore } from '../../server/workspace/samples/sampleStore';
import { anyTexts } from '../unit/edits/anyTexts';
import { concernedHeaders, expectSoundEdits, isTakenOut } from '../unit/edits/concerned';
import type { Texts } from '../unit/edits/includingTexts';
import { talkativeSamples } from '../unit/edits/talkativeSamples';
import type { Format } from '../unit/features/anyInstrument';
import { effective, readText } from '../unit/features/anyInstrument';
import { MemoryFiles } from '../unit/workspace/memoryFiles';
import { damaged, damages } from './damage';
import { target } from './target';

interface Case extends Texts {
  from: number;
  length: number;
}

const noSamples = new SampleStore(new MemoryFiles({}));
/** Refactorings that change what the selected scope sounds like, which they are there for. */
const changing = new Set(['closeKeyGaps', 'roundRobins']);

function cases(format: Format): fc.Arbitrary<Case> {
  return fc
    .record({ texts: anyTexts[format], list: damages, from: fc.nat(), length: fc.nat(120) })
    .map(({ texts: { main, files }, list, from, length }) => {
      const text = damaged(main, list);
      return { main: text, files, from: from % (text.length + 1), length };
    });
}

/** Fails where edits change a region that has nothing in the text that they touch. */
function expectOthersKept(format: Format, instrument: Instrument, edits: readonly TextEdit[]): void {
  expectSoundEdits(instrument, edits);
  const concerned = concernedHeaders(instrument, edits);
  const before = effective(instrument);
  const after = effective(readEdited(notations[format], instrument, edits));
  const kept = [...instrument.regions].filter((region) => !isTakenOut(instrument, region, edits));
  assert.equal(after.length, kept.length, 'another number of regions');
  kept.forEach((region, at) => {
    if (!concerned[region]) assert.deepEqual(after[at], before[instrument.regionNumber(region)]);
  });
}

function fixesTouchTheirOwn(format: Format, { main, files, from }: Case): void {
  const instrument = readText(format, main, files);
  const findings = checkInstrument({ instrument, notation: notations[format], samples: talkativeSamples });
  const step = Math.ceil(findings.length / 8);
  for (const finding of findings.filter((_one, at) => (at + from) % step === 0))
    for (const { edits } of finding.fixes?.() ?? []) {
      assert(edits.length > 0, `a fix of ${finding.code} does nothing`);
      expectOthersKept(format, instrument, edits);
    }
  for (let source = 0; source < instrument.sources.length; source++)
    expectOthersKept(format, instrument, allSafeEdits(findings, source));
}

async function refactoringsKeepAll(format: Format, { main, files, from, length }: Case): Promise<void> {
  const notation = notations[format];
  const instrument = readText(format, main, files);
  const end = length % 3 === 0 ? from : Math.min(main.length, from + length);
  const document = { notation, instrument, folder: '/music', samples: noSamples };
  const selected = { ...document, start: from, end };
  const before = effective(instrument);
  for (const refactoring of refactorings) {
    if (refactoring.offer(selected) === undefined) continue;
    const edit = await refactoring.make(selected);
    if (!edit) continue;
    const edits = joinEdits(edit.edits);
    assert(edits.every(({ source }) => source === 0));
    if (changing.has(refactoring.id)) {
      expectOthersKept(format, instrument, edits);
      continue;
    }
    expectSoundEdits(instrument, edits);
    const all = { ...files, ...(edit.newFile && { [edit.newFile.path]: edit.newFile.text }) };
    const after = effective(readText(format, editedText(main, edits), all));
    if (refactoring.id === 'sortRegions') assert.deepEqual(sorted(after), sorted(before), refactoring.id);
    else assert.deepEqual(after, before, refactoring.id);
  }
}

function layoutKeepsAll(format: Format, { main, files, from, length }: Case): void {
  const notation = notations[format];
  const instrument = readText(format, main, files);
  const document = { notation, instrument, folder: '/music', samples: noSamples };
  const headers = (['regionsInline', 'inline', 'ownLine'] as const)[length % 3] ?? 'inline';
  const style = { ...usualFormatStyle, headers, alignColumns: length % 2 === 0 };
  const end = Math.min(main.length, from + length);
  const before = effective(instrument);
  for (const edits of [formatDocument(document, style), formatRange(document, from, end, style)]) {
    assert(edits.every(({ source }) => source === 0));
    expectSoundEdits(instrument, edits);
    assert.deepEqual(effective(readText(format, editedText(main, edits), files)), before);
  }
  const own = { instrument, notation, notationOf: () => notation };
  for (const old of new Set(variablePlaces(instrument).map(({ name }) => name))) {
    const { files: changed } = renameVariable([own], old, 'NEWNAME');
    if (!changed) continue;
    const edits = changed.flatMap(({ source: { path }, edits: list }) =>
      list.map((edit) => standingIn<TextEdit>(sourceNumber(instrument, path), edit)),
    );
    assert.deepEqual(effective(readEdited(notation, instrument, edits)), before, `renaming ${old}`);
  }
}

function sourceNumber({ sources }: Instrument, path: string): number {
  return sources.findIndex((source) => source.path === path);
}

function sorted(regions: readonly object[]): string[] {
  return regions.map((values) => JSON.stringify(values)).sort();
}

/** Edits touch only what they name, and leave what all other regions sound like. */
export const editTargets = (['sfz', 'xml'] as const).flatMap((format) => [
  target(`fixes in ${format}`, 'texts', cases(format), (one) => fixesTouchTheirOwn(format, one)),
  target(`refactorings in ${format}`, 'texts', cases(format), (one) => refactoringsKeepAll(format, one)),
  target(`layout and renaming in ${format}`, 'texts', cases(format), (one) => layoutKeepsAll(format, one)),
]);
