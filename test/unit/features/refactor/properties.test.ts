import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Refactoring } from '../../../../server/features/refactor/refactoring';
import { refactorings } from '../../../../server/features/refactor/refactorings';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../../workspace/memoryFiles';
import type { Format } from '../anyInstrument';
import { anyInstrumentXml, anySfz, effective, includedFiles, readText } from '../anyInstrument';
import { withEdits } from '../appliedEdits';

/** Few values, so that regions often share them. */
const opcodes = fc.uniqueArray(
  fc.tuple(
    fc.constantFrom(
      'key',
      'lokey',
      'hikey',
      'pitch_keycenter',
      'sample',
      'pan',
      'lovel',
      'group_label',
      'loopmode',
    ),
    fc.constantFrom('60', '60', '61', 'c4', '$KEY'),
  ),
  { selector: ([name]) => name, maxLength: 6 },
);
/** Headers with their opcodes; some are the same in all regions. */
const headers = fc
  .tuple(
    opcodes,
    fc.array(
      fc.tuple(
        fc.constantFrom('region', 'region', 'region', 'region', 'region', 'group', 'master'),
        opcodes,
        fc.nat(9),
      ),
      { maxLength: 10 },
    ),
  )
  .map(([shared, list]) =>
    list.map(([name, own, odd]) => {
      const names = new Set(shared.slice(0, 3).map(([opcode]) => opcode));
      const set =
        name === 'region' ? [...shared.slice(0, 3), ...own.filter(([opcode]) => !names.has(opcode))] : own;
      return [name, set, odd] as const;
    }),
  );

const sharingSfz = headers.map((list) =>
  [
    '#define $KEY 59\n',
    ...list.map(([name, set, odd]) => {
      const gap = odd === 0 ? '\n' : ' ';
      const opcodes = set.map(([opcode, value]) => `${gap}${opcode}=${value}`).join('');
      const remark = odd === 1 ? ' // remark' : odd === 2 ? '\n// above' : odd === 3 ? ' /* x */' : '';
      return `<${name}>${opcodes}${remark}${odd === 4 ? '\n#define $KEY 58\n' : odd === 5 ? ' ' : odd === 6 ? '\n#include "part.sfz"\n' : '\n'}`;
    }),
  ].join(''),
);
const sharingXml = headers.map((list) => {
  let text = '<instrument>\n<define name="KEY" value="59"/>\n';
  let open = '';
  for (const [name, set, odd] of list) {
    const attributes = set.map(([opcode, value]) => ` ${opcode}="${value}"`).join('');
    if (name === 'region') text += `<region${attributes}/>${odd === 1 ? ' <!-- remark -->' : ''}\n`;
    else {
      text += open;
      open = odd < 6 && name === 'group' ? `</${name}>\n` : '';
      text += `<${name}${attributes}${open === '' ? '/' : ''}>\n`;
    }
    if (odd === 4) text += '<define name="KEY" value="58"/>\n';
  }
  return `${text}${open}</instrument>\n`;
});

const texts: Record<Format, fc.Arbitrary<string>> = {
  sfz: fc.oneof({ weight: 3, arbitrary: sharingSfz }, anySfz),
  xml: fc.oneof({ weight: 3, arbitrary: sharingXml }, anyInstrumentXml),
};

const samples = new SampleStore(new MemoryFiles({}));
const named = (id: string) => refactorings.find((one) => one.id === id) as Refactoring;
const ordered = (format: Format, text: string, files: Record<string, string>) =>
  effective(readText(format, text, files));
const asSet = (format: Format, text: string, files: Record<string, string>) =>
  ordered(format, text, files)
    .map((values) => JSON.stringify(values))
    .sort();

describe.each(['sfz', 'xml'] as const)('refactoring any %s instrument', (format) => {
  it.each([
    ['shareOpcodes', ordered],
    ['pushDown', ordered],
    ['joinKeys', ordered],
    ['splitKeys', ordered],
    ['keysAsNames', ordered],
    ['allKeysAsNames', ordered],
    ['keysAsNumbers', ordered],
    ['allKeysAsNumbers', ordered],
    ['extractDefine', ordered],
    ['inlineInclude', ordered],
    ['regionsToGroup', ordered],
    ['regionsToFile', ordered],
    ['sortRegions', asSet],
  ] as const)('keeps what every region sounds like: %s', async (id, meaning) => {
    const refactoring = named(id);
    let made = 0;
    await fc.assert(
      fc.asyncProperty(texts[format], fc.nat(), fc.nat(), async (text, from, length) => {
        const include = id === 'inlineInclude' ? text.search(/[#<]include/) : -1;
        const start = include >= 0 ? include + 1 : from % (text.length + 1);
        const end = Math.min(text.length, start + (include >= 0 || length % 5 < 2 ? 0 : length % 200));
        const instrument = readText(format, text, includedFiles);
        const selected = { notation: notations[format], instrument, folder: '/music', samples, start, end };
        if (refactoring.offer(selected) === undefined) return;
        const edit = await refactoring.make(selected);
        if (!edit) return;
        made++;
        const after = withEdits(text, edit.edits);
        const files = edit.newFile
          ? { ...includedFiles, [edit.newFile.path]: edit.newFile.text }
          : includedFiles;
        expect(meaning(format, after, files)).toEqual(meaning(format, text, includedFiles));
        const faults = (list: readonly { code: string }[]) =>
          list.filter(({ code }) => code === 'syntax-error').length;
        expect(faults(readText(format, after, files).findings)).toBeLessThanOrEqual(
          faults(instrument.findings),
        );
      }),
      { numRuns: 500 },
    );
    expect(made).toBeGreaterThan(0);
  });
});
