import { describe, expect, it } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import { readEdited } from '../../../server/model/editing/changedInstrument';
import type { Fix } from '../../../server/model/finding';
import { notations } from '../../../server/workspace/notations/notationOf';
import { samplesInMemory } from '../checks/markedText';
import type { Format } from '../features/anyInstrument';
import { effective, readText } from '../features/anyInstrument';
import { expectSoundEdits } from './concerned';
import { talkativeSamples } from './talkativeSamples';

type Files = Record<string, string>;

/** The fixes of the first finding of a code, and what the regions are after each. */
function fixed(format: Format, text: string, files: Files, code: string) {
  const notation = notations[format];
  const instrument = readText(format, text, files);
  const findings = checkInstrument({ instrument, notation, samples: samplesInMemory() });
  const fixes: Fix[] = findings.find((finding) => finding.code === code)?.fixes?.() ?? [];
  return fixes.map((fix) => ({
    ...fix,
    before: effective(instrument),
    after: effective(readEdited(notation, instrument, fix.edits)),
  }));
}

describe('taking a region out', () => {
  it.each([
    [
      'whose last opcodes stand in front of an include of regions',
      '<region> sample=a.wav key=60\n<region> sample=a.wav key=60\n#include "part.sfz"\nvolume=-3\n<region> sample=c.wav key=64\n',
      { '/music/part.sfz': '<region> sample=b.wav key=61\n<region> sample=b.wav key=62\n' },
    ],
    [
      'with variables that are set among its opcodes',
      '<region> sample=a.wav key=60\n<region> sample=a.wav\n#define $KEY 62\nkey=60\n<region> sample=c.wav key=$KEY\n',
      {},
    ],
    [
      'with an include of variables among its opcodes',
      '<region> sample=a.wav key=60\n<region> sample=a.wav\n#include "part.sfz"\nkey=60\n<region> sample=c.wav key=$KEY\n',
      { '/music/part.sfz': '#define $KEY 62\n' },
    ],
  ])('%s leaves all others', (_what, text, files) => {
    const [fix, ...more] = fixed('sfz', text, files, 'region-duplicate');
    expect(more).toEqual([]);
    expect(fix?.edits.every(({ source }) => source === 0)).toBe(true);
    expect(fix?.after).toEqual(fix?.before.filter((_region, at) => at !== 1));
  });

  it('takes out the one of an included file that goes on behind the include, or leaves it', () => {
    const text = '<region> sample=a.wav key=60\n#include "part.sfz"\nkey=60\n<region> sample=c.wav key=62\n';
    const files = { '/music/part.sfz': '<region> sample=a.wav\n' };
    expect(fixed('sfz', text, files, 'region-duplicate')).toEqual([]);
  });

  it('is not offered where its text stands for several regions', () => {
    const text = '<group> volume=-6\n#include "part.sfz"\n<group> volume=-6\n#include "part.sfz"\n';
    const files = { '/music/part.sfz': '<region> sample=a.wav key=60\n' };
    expect(fixed('sfz', text, files, 'region-duplicate')).toEqual([]);
  });
});

// Found by fuzzing: what the fix of the root key takes out is where the tuning is put.
it('fixes of several values of a region that goes on in another file touch no text twice', () => {
  const files = {
    '/music/a.sfz': '<region> #include "c.sfz"\n key=60 ',
    '/music/b.sfz': 'lokey=60 sample=a.wav ',
    '/music/c.sfz': '',
  };
  const instrument = readText('sfz', '#include "a.sfz"\n #include "b.sfz"\n ', files);
  const findings = checkInstrument({ instrument, notation: notations.sfz, samples: talkativeSamples });
  const fixes = findings.find(({ code }) => code === 'root-mismatch')?.fixes?.() ?? [];
  expect(fixes.map(({ title }) => title)).toContain('Set the root key to 59 (B3) and tune by -20 cents');
  for (const { edits } of fixes) {
    expectSoundEdits(instrument, edits);
    const [region] = effective(readEdited(notations.sfz, instrument, edits));
    expect(region?.tune).toBe(edits.some(({ newText }) => newText.includes('keycenter')) ? -20 : 80);
  }
});
