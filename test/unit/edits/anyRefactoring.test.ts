import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditedFile } from '../../../server/features/fileEdits';
import { formatDocument, formatOnType, formatRange } from '../../../server/features/format';
import { refactorings } from '../../../server/features/refactor/refactorings';
import { renameLabel, renameVariable } from '../../../server/features/rename/rename';
import { editedText, readEdited } from '../../../server/model/editing/changedInstrument';
import { joinEdits } from '../../../server/model/editing/edits';
import type { TextEdit } from '../../../server/model/finding';
import { usualFormatStyle } from '../../../server/model/formatStyle';
import type { Instrument } from '../../../server/model/instrument';
import type { Source } from '../../../server/model/text/source';
import { standingIn } from '../../../server/model/text/span';
import { variablePlaces } from '../../../server/model/variables/variableUses';
import { notationOfFile } from '../../../server/workspace/notations/detectedNotation';
import { notations } from '../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { effective, readText } from '../features/anyInstrument';
import { MemoryFiles } from '../workspace/memoryFiles';
import { anyTexts } from './anyTexts';
import { concernedHeaders, expectSoundEdits } from './concerned';

const samples = new SampleStore(new MemoryFiles({}));

/** Refactorings that change what the selected scope sounds like, which they are there for. */
const changing = new Set(['closeKeyGaps', 'roundRobins']);

function sorted(regions: Record<string, number | string>[]): string[] {
  return regions.map((values) => JSON.stringify(values)).sort();
}

describe.each(['sfz', 'xml'] as const)('in %s with includes anywhere', (format) => {
  const notation = notations[format];

  it('a refactoring changes the document alone, and what each region sounds like only where it says so', async () => {
    const made = new Set<string>();
    await fc.assert(
      fc.asyncProperty(anyTexts[format], fc.nat(), fc.nat(120), async ({ main, files }, from, length) => {
        const instrument = readText(format, main, files);
        const start = from % (main.length + 1);
        const end = length % 3 === 0 ? start : Math.min(main.length, start + length);
        const selected = { notation, instrument, folder: '/music', samples, start, end };
        for (const refactoring of refactorings) {
          if (refactoring.offer(selected) === undefined) continue;
          const edit = await refactoring.make(selected);
          if (!edit) continue;
          made.add(refactoring.id);
          const edits = joinEdits(edit.edits);
          expect(edits.every(({ source }) => source === 0)).toBe(true);
          expectSoundEdits(instrument, edits);
          const all = { ...files, ...(edit.newFile && { [edit.newFile.path]: edit.newFile.text }) };
          const after = effective(readText(format, editedText(main, edits), all));
          const before = effective(instrument);
          if (refactoring.id === 'sortRegions') expect(sorted(after)).toEqual(sorted(before));
          else if (!changing.has(refactoring.id)) expect(after).toEqual(before);
          else expectOnlyConcerned(instrument, edits, before, after);
        }
      }),
      { numRuns: 400 },
    );
    expect(made.size).toBeGreaterThan(9);
  });

  it('renaming a variable changes no value, and renaming a label that label alone', () => {
    let variables = 0;
    let labels = 0;
    fc.assert(
      fc.property(
        anyTexts[format],
        fc.constantFrom('NEW', 'KE', 'KEYSX', 'NAMEA'),
        ({ main, files }, name) => {
          const instrument = readText(format, main, files);
          const own = {
            instrument,
            notation,
            notationOf: (source: Source) => notationOfFile(source.path, source.text) ?? notation,
          };
          const before = effective(instrument);
          for (const old of new Set(variablePlaces(instrument).map((place) => place.name))) {
            const { files: changed } = renameVariable([own], old, name);
            if (!changed) continue;
            variables++;
            expect(effective(readEdited(notation, instrument, editsIn(instrument, changed)))).toEqual(before);
          }
          const { files: changed } = renameLabel([own], { opcode: 'group_label', name: 'Soft' }, 'Quiet one');
          if (!changed || changed.length === 0) return;
          labels++;
          const wanted = before.map((values) =>
            values.group_label === 'Soft' ? { ...values, group_label: 'Quiet one' } : values,
          );
          expect(effective(readEdited(notation, instrument, editsIn(instrument, changed)))).toEqual(wanted);
        },
      ),
      { numRuns: 400 },
    );
    expect(variables).toBeGreaterThan(100);
    expect(labels).toBeGreaterThan(5);
  });

  it('formatting keeps every value, in the whole document, in a stretch and while typing', () => {
    fc.assert(
      fc.property(
        anyTexts[format],
        fc.nat(),
        fc.nat(80),
        fc.constantFrom('regionsInline', 'inline', 'ownLine'),
        fc.boolean(),
        ({ main, files }, from, length, headers, alignColumns) => {
          const instrument = readText(format, main, files);
          const document = { notation, instrument, folder: '/music', samples };
          const style = { ...usualFormatStyle, headers, alignColumns };
          const start = from % (main.length + 1);
          const end = Math.min(main.length, start + length);
          for (const edits of [
            formatDocument(document, style),
            formatRange(document, start, end, style),
            formatOnType(document, end, '\n', style),
          ]) {
            expect(edits.every(({ source }) => source === 0)).toBe(true);
            expectSoundEdits(instrument, edits);
            expect(effective(readText(format, editedText(main, edits), files))).toEqual(
              effective(instrument),
            );
          }
        },
      ),
      { numRuns: 400 },
    );
  });
});

function expectOnlyConcerned(
  instrument: Instrument,
  edits: readonly TextEdit[],
  before: Record<string, number | string>[],
  after: Record<string, number | string>[],
): void {
  expect(after).toHaveLength(before.length);
  const concerned = concernedHeaders(instrument, edits);
  instrument.regions.forEach((region, at) => {
    if (!concerned[region]) expect(after[at]).toEqual(before[at]);
  });
}

/** The edits of files as edits of an instrument's sources. */
function editsIn({ sources }: Instrument, files: readonly EditedFile[]): TextEdit[] {
  return files.flatMap(({ source: { path }, edits }) =>
    edits.map((edit) =>
      standingIn<TextEdit>(
        sources.findIndex((one) => one.path === path),
        edit,
      ),
    ),
  );
}
