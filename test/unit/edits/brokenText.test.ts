import { describe, expect, it } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import { refactorings } from '../../../server/features/refactor/refactorings';
import { keepsRegions } from '../../../server/model/editing/editReach';
import { replacing } from '../../../server/model/editing/edits';
import { spanIn } from '../../../server/model/text/span';
import { notations } from '../../../server/workspace/notations/notationOf';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { readText } from '../features/anyInstrument';
import { MemoryFiles } from '../workspace/memoryFiles';
import { talkativeSamples } from './talkativeSamples';

const notation = notations.xml;

// Found by fuzzing: in a text with a quote missing, what is put in can end up in a value.
describe('in XML with faults of syntax', () => {
  const text = `<instrument><region key="60"
   samplea.wav' hirand="3" ampeg_release="0.5"></region>
<region sample="a.wav" key="60"/></instrument>`;

  it('no refactoring is made that changes other values than it says', async () => {
    const instrument = readText('xml', text);
    const samples = new SampleStore(new MemoryFiles({}));
    const selected = { notation, instrument, folder: '/music', samples, start: 0, end: text.length };
    for (const refactoring of refactorings) {
      const made = refactoring.offer(selected) && (await refactoring.make(selected));
      if (!made || made.newFile) continue;
      expect(keepsRegions(notation, instrument, made.edits, refactoring.keeps ?? 'all')).toBe(true);
    }
    const splits = refactorings.find(({ id }) => id === 'splitKeys');
    expect(splits?.offer(selected)).toBeDefined();
    expect(await splits?.make(selected)).toBeUndefined();
  });

  it('no change holds that touches the same text twice', () => {
    const instrument = readText('xml', text);
    const { source, start, end } = instrument.headerSpan(0);
    const edits = [
      replacing(spanIn(source, start, end), '<region'),
      replacing(spanIn(source, start + 1, end), 'region'),
    ];
    expect(keepsRegions(notation, instrument, edits.slice(0, 1), 'all')).toBe(true);
    expect(keepsRegions(notation, instrument, edits, 'all')).toBe(false);
  });

  it('no fix is offered that changes other regions, and those that do not still are', () => {
    const instrument = readText('xml', text);
    const findings = checkInstrument({ instrument, notation, samples: talkativeSamples });
    const fixes = findings.flatMap((finding) => finding.fixes?.() ?? []);
    expect(fixes.length).toBeGreaterThan(0);
    for (const { edits } of fixes)
      expect(keepsRegions(notation, instrument, edits, 'what it does not touch')).toBe(true);
  });
});
