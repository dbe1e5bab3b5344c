import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

describe('typographic quotation marks around cells', () => {
  it.each(['“x”', '„x“', '„x”', '«x»', '» x «', '‚x‘', '‘x’', '”x”', '「x」', '‹x›', '« x »'])(
    '%s are no part of them',
    (marks) => {
      const cell = (text: string) => marks.replace('x', text);
      const text = `File;Low;Root;Tune\n${cell('oboe.wav')};${cell('50')};52;${cell('–3')}\n${cell('tuba.wav')};53;55;−4\n`;
      expect(regions(text).map(({ sample, lokey, tune }) => [sample, lokey, tune])).toEqual([
        ['oboe.wav', '50', '-3'],
        ['tuba.wav', '53', '-4'],
      ]);
    },
  );

  it('stay where they stand around a part', () => {
    const text = 'File\tRoot\n“low” oboe.wav\t50\n“a” or “b”.wav\t52\n';
    expect(regions(text).map(({ sample }) => sample)).toEqual(['“low” oboe.wav', '“a” or “b”.wav']);
  });
});
