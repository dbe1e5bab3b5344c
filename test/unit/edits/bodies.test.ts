import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headerSummaries } from '../../../server/features/codeLenses';
import { headerSymbols } from '../../../server/features/navigation/symbols';
import { selectionsAt } from '../../../server/features/selectionRanges';
import { notations } from '../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { readText } from '../features/anyInstrument';
import { MemoryFiles } from '../workspace/memoryFiles';
import { anyTexts } from './anyTexts';

const samples = new SampleStore(new MemoryFiles({}));

describe('with includes anywhere', () => {
  it('the body of an SFZ header holds its tag and what it sets in its file, and no tag of another', () => {
    let parted = 0;
    fc.assert(
      fc.property(anyTexts.sfz, ({ main, files }) => {
        const instrument = readText('sfz', main, files);
        const bodies = Array.from({ length: instrument.headers.count }, (_, header) =>
          instrument.bodySpan(header),
        );
        bodies.forEach(({ source, start, end }, header) => {
          if (!instrument.isInOneFile(header)) parted++;
          expect(end).toBeLessThanOrEqual(instrument.sources[source]?.text.length ?? -1);
          if (instrument.readOften.has(source)) return;
          const own: number[] = [instrument.headerSpan(header).end];
          for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++)
            if (instrument.parameterSource(one) === source) own.push(instrument.parameterSpan(one).end);
          expect(end).toBe(Math.max(...own));
          for (const other of bodies)
            if (other.source === source) expect(other.start > start && other.start < end).toBe(false);
        });
      }),
      { numRuns: 400 },
    );
    expect(parted).toBeGreaterThan(100);
  });

  it.each(['sfz', 'xml'] as const)('what is shown of %s stands in the document and nests', (format) => {
    fc.assert(
      fc.property(anyTexts[format], fc.nat(), ({ main, files }, at) => {
        const instrument = readText(format, main, files);
        const stretches = [
          ...headerSummaries(instrument),
          ...headerSymbols(instrument),
          ...selectionsAt(
            { notation: notations[format], instrument, folder: '/music', samples },
            at % (main.length + 1),
          ),
        ];
        for (const { start, end } of stretches) {
          expect(start).toBeLessThanOrEqual(end);
          expect(end).toBeLessThanOrEqual(main.length);
        }
        let last = 0;
        for (const { start, end } of headerSymbols(instrument)) {
          expect(start).toBeGreaterThanOrEqual(last);
          last = end;
        }
      }),
      { numRuns: 400 },
    );
  });
});
