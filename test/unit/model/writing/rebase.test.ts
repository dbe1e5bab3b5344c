import { describe, expect, it } from 'vitest';
import { writtenValue } from '../../../../server/model/writing/rebase';
import { readSfz } from '../../../../server/sfz/read';

/** The values of all parameters of an instrument in `/a/b` as they are written into another folder. */
function written(text: string, to?: string): string[] {
  const instrument = readSfz(text, { path: '/a/b/c.sfz' });
  const options = to === undefined ? {} : { move: { from: '/a/b', to } };
  return Array.from({ length: instrument.parameters.count }, (_, parameter) =>
    writtenValue(instrument, instrument.headerOfParameter(parameter), parameter, options),
  );
}

describe('values written into another folder', () => {
  it('lead samples back to their files', () => {
    expect(written('<region> sample=x/a.wav key=60', '/a/x')).toEqual(['../b/x/a.wav', '60']);
    expect(written('<region> sample=..\\a.wav', '/a')).toEqual(['a.wav']);
  });

  it('lead the default path back, and not the samples behind it as well', () => {
    expect(written('<control> default_path=Samples/ <region> sample=a.wav', '/a/b/sub')).toEqual([
      '../Samples/',
      'a.wav',
    ]);
    expect(written('<control> default_path=Samples/Soft_ <region> sample=a.wav', '/a/b/sub')).toEqual([
      '../Samples/Soft_',
      'a.wav',
    ]);
    expect(written('<control> default_path= <region> sample=a.wav', '/a/b/sub')).toEqual(['', '../a.wav']);
  });

  it('leave generators, absolute paths and other values alone', () => {
    expect(written('<region> sample=*sine group_label=a/b', '/a/b/sub')).toEqual(['*sine', 'a/b']);
    expect(written('<region> sample=C:\\x\\a.wav', '/a/b/sub')).toEqual(['C:\\x\\a.wav']);
    expect(written('<region> sample=/x/a.wav', '/a/b/sub')).toEqual(['/x/a.wav']);
  });

  it('stay as they are in the same folder', () => {
    expect(written('<region> sample=x\\a.wav')).toEqual(['x\\a.wav']);
    expect(written('<region> sample=x\\a.wav', '/a/b')).toEqual(['x\\a.wav']);
  });
});
