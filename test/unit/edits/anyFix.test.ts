import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import { allSafeEdits } from '../../../server/features/quickFixes';
import { readEdited } from '../../../server/model/editing/changedInstrument';
import type { TextEdit } from '../../../server/model/finding';
import type { Instrument } from '../../../server/model/instrument';
import { notations } from '../../../server/workspace/notations/notationOf';
import type { Format } from '../features/anyInstrument';
import { effective, readText } from '../features/anyInstrument';
import { anyTexts } from './anyTexts';
import { concernedHeaders, expectSoundEdits, isTakenOut } from './concerned';
import { talkativeSamples } from './talkativeSamples';

/** Fails where edits change a region that has nothing in the text they touch. */
function expectOthersKept(format: Format, instrument: Instrument, edits: readonly TextEdit[]): void {
  expectSoundEdits(instrument, edits);
  const concerned = concernedHeaders(instrument, edits);
  const before = effective(instrument);
  const after = effective(readEdited(notations[format], instrument, edits));
  const kept = [...instrument.regions].filter((region) => !isTakenOut(instrument, region, edits));
  expect(after).toHaveLength(kept.length);
  kept.forEach((region, at) => {
    if (!concerned[region]) expect(after[at]).toEqual(before[instrument.regionNumber(region)]);
  });
}

describe.each(['sfz', 'xml'] as const)('in %s with includes anywhere', (format) => {
  const notation = notations[format];

  it('a fix changes the text and the regions that it is about, and nothing else', () => {
    const fixed = new Map<string, number>();
    fc.assert(
      fc.property(anyTexts[format], ({ main, files }) => {
        const instrument = readText(format, main, files);
        const findings = checkInstrument({ instrument, notation, samples: talkativeSamples });
        // Of a long text not all, as each is tried by reading the whole again.
        const step = Math.ceil(findings.length / 40);
        for (const finding of findings.filter((_one, at) => at % step === 0)) {
          for (const fix of finding.fixes?.() ?? []) {
            expect(fix.edits.length).toBeGreaterThan(0);
            fixed.set(finding.code, (fixed.get(finding.code) ?? 0) + 1);
            expectOthersKept(format, instrument, fix.edits);
          }
        }
        for (let source = 0; source < instrument.sources.length; source++) {
          const edits = allSafeEdits(findings, source);
          expect(edits.every((edit) => edit.source === source)).toBe(true);
          expectOthersKept(format, instrument, edits);
        }
      }),
      { numRuns: 150 },
    );
    // Enough kinds of fixes have been tried.
    expect(fixed.size).toBeGreaterThan(8);
    for (const code of ['region-duplicate', 'opcode-value', 'sample-missing', 'no-effect'])
      expect(fixed.get(code) ?? 0).toBeGreaterThan(0);
  });
});
