import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeaderKind } from '../../../../server/model/headerKinds';
import { readSfz } from '../../../../server/sfz/read';
import { groupNames } from '../../../../server/trade/names/groupNames';

const read = (text: string) => readSfz(text, { path: 'kit.sfz', include: () => ({ kind: 'missing' }) });

/** The names of the groups in the order of the text; a group without a name is `undefined`. */
function names(text: string): (string | undefined)[] {
  const instrument = read(text);
  const groups: number[] = [];
  for (let header = 0; header < instrument.headers.count; header++) {
    if (instrument.kind(header) === HeaderKind.group) groups.push(header);
  }
  return groups.map((group) => groupNames(instrument).nameOf(group));
}

const group = (...samples: string[]) =>
  `<group>\n${samples.map((sample) => `<region> sample=${sample}\n`).join('')}`;

// How files of samples are named is common practice; the names are invented.
describe('names of groups without a label', () => {
  it('are what the names of their samples share', () => {
    expect(
      names(
        group('kit/snare2_v1_rr1.wav', 'kit/snare2_v2_rr1.wav') +
          group('kit/CongaLow-p.wav', 'kit/CongaLow-f.wav') +
          group('01 woodblock.wav', '02 woodblock.wav'),
      ),
    ).toEqual(['Snare 2', 'Conga Low', 'Woodblock']);
  });

  it('leave out notes, and what all samples of the instrument share', () => {
    expect(
      names(
        group('reed_soft_C4.wav', 'reed_soft_F#4.wav') +
          group('reed_loud_C4.wav', 'reed_loud_F#4.wav') +
          group('reed_C4_off.wav'),
      ),
    ).toEqual(['Soft', 'Loud', 'Off']);
    expect(names(group('reed_C4.wav', 'reed_D4.wav') + group('reed_E4.wav'))).toEqual([
      'Reed',
      'Reed, group 2',
    ]);
  });

  it('are the folder of the samples where their names share nothing', () => {
    expect(names(group('Gong\\1.wav', 'Gong\\2.wav') + group('1.wav', '2.wav'))).toEqual(['Gong', undefined]);
  });

  it('are not given where there is a label, and never one that another group has', () => {
    expect(
      names(
        `<group> group_label=Snare\n<region> sample=a.wav\n${group('snare.wav')}<group>\n<region> sample=*sine\n<group>`,
      ),
    ).toEqual([undefined, 'Snare, group 2', undefined, undefined]);
  });

  it('differ for all groups, whatever the samples are called', () => {
    const sample = fc.stringMatching(/^[a-cA-C1-3_ /-]{0,8}$/).map((name) => `${name}.wav`);
    fc.assert(
      fc.property(fc.array(fc.array(sample, { maxLength: 3 }), { maxLength: 5 }), (groups) => {
        const found = names(groups.map((samples) => group(...samples)).join('')).filter(
          (name) => name !== undefined,
        );
        expect(new Set(found).size).toBe(found.length);
        for (const name of found) expect(name).not.toBe('');
      }),
    );
  });
});
