import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import { convertTable } from '../../../server/pasting/convertTable';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { notations } from '../../../server/workspace/notations/notationOf';
import { effective, readText } from '../features/anyInstrument';
import { MemoryFiles } from '../workspace/memoryFiles';
import { anyTexts } from './anyTexts';
import { expectSoundEdits } from './concerned';

const tables = {
  plain: 'Sample;Low;High;Root\nlow.wav;36;47;40\nhigh.wav;48;59;52\n',
  groups:
    'Sample;Root;Group\nbell_p.wav;60;Bells\nbell_f.wav;60;Bells\nbar_p.wav;61;Bars\nbar_f.wav;61;Bars\n',
};

const countOf = (text: string, part: string) => text.split(part).length - 1;

describe.each(['sfz', 'xml'] as const)('pasting a table into %s with includes anywhere', (format) => {
  it.each(Object.entries(tables))(
    'leaves all regions that are there as they are: %s',
    async (name, table) => {
      const rows = table.trim().split('\n').length - 1;
      let inGroups = 0;
      await fc.assert(
        fc.asyncProperty(anyTexts[format], fc.nat(), fc.boolean(), async ({ main, files }, at, grouped) => {
          const store = new MemoryFiles(files);
          const start = at % (main.length + 1);
          const path = format === 'sfz' ? '/music/main.sfz' : '/music/main.instrument.xml';
          const { edits } = await convertTable(
            store,
            new IncludeStore(store),
            table,
            { text: main, start, end: start, notation: notations[format], path, folder: '/music' },
            { middleC: 'auto', groupings: new Set(grouped ? ['layers'] : []) },
          );
          const instrument = readText(format, main, files);
          expect(edits.every(({ source }) => source === 0)).toBe(true);
          expectSoundEdits(instrument, edits);
          const changed = editedText(main, edits);
          inGroups += countOf(changed, '<group') - countOf(main, '<group');
          const after = effective(readText(format, changed, files)).map((values) => JSON.stringify(values));
          expect(after).toHaveLength(instrument.regions.length + rows);
          let next = 0;
          for (const values of effective(instrument)) {
            next = after.indexOf(JSON.stringify(values), next) + 1;
            expect(next, `${JSON.stringify(values)} is left in\n${changed}`).toBeGreaterThan(0);
          }
        }),
        { numRuns: 120 },
      );
      expect(inGroups > 300).toBe(name === 'groups');
    },
  );

  it('brings up to date the regions of its samples alone', async () => {
    const table = 'Sample;Low;High;Root\na.wav;36;47;40\nb.wav;48;59;52\n';
    let changed = 0;
    await fc.assert(
      fc.asyncProperty(anyTexts[format], fc.nat(), async ({ main, files }, at) => {
        const store = new MemoryFiles({ ...files, '/music/a.wav': '', '/music/b.wav': '' });
        const start = at % (main.length + 1);
        const path = format === 'sfz' ? '/music/main.sfz' : '/music/main.instrument.xml';
        const target = { text: main, start, end: start, notation: notations[format], path, folder: '/music' };
        const choices = { middleC: 'auto' as const, update: true };
        const { edits, addedCount, ...updated } = await convertTable(
          store,
          new IncludeStore(store),
          table,
          target,
          choices,
        );
        changed += updated.changedCount;
        const instrument = readText(format, main, files);
        expect(edits.every(({ source }) => source === 0)).toBe(true);
        expectSoundEdits(instrument, edits);
        const others = (regions: Record<string, number | string>[]) =>
          regions
            .filter(({ sample }) => !/^(.*\/)?[ab]\.wav$/i.test(String(sample)))
            .map((values) => JSON.stringify(values));
        const after = effective(readText(format, editedText(main, edits), files));
        const before = effective(instrument);
        expect(after).toHaveLength(before.length + addedCount);
        expect(others(after)).toEqual(others(before));
      }),
      { numRuns: 120 },
    );
    expect(changed).toBeGreaterThan(15);
  });
});
