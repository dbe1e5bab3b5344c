import { describe, expect, it } from 'vitest';
import { writtenValue } from '../../../server/model/rebase';
import { readSfz } from '../../../server/sfz/read';

/** The values of all parameters as they are written into a folder from which a path leads to the instrument. */
function written(text: string, pathToOrigin?: string): string[] {
  const instrument = readSfz(text, { path: '/a/b.sfz' });
  const options = pathToOrigin === undefined ? {} : { pathToOrigin };
  return Array.from({ length: instrument.parameters.count }, (_, parameter) =>
    writtenValue(instrument, instrument.headerOfParameter(parameter), parameter, options),
  );
}

describe('values written into another folder', () => {
  it('lead samples back to their files', () => {
    expect(written('<region> sample=x/a.wav key=60', '../b')).toEqual(['../b/x/a.wav', '60']);
    expect(written('<region> sample=..\\a.wav', 'sub')).toEqual(['a.wav']);
  });

  it('lead the default path back, and not the samples behind it as well', () => {
    expect(written('<control> default_path=Samples/ <region> sample=a.wav', '..')).toEqual([
      '../Samples/',
      'a.wav',
    ]);
    expect(written('<control> default_path=Samples/Soft_ <region> sample=a.wav', '..')).toEqual([
      '../Samples/Soft_',
      'a.wav',
    ]);
    expect(written('<control> default_path= <region> sample=a.wav', '..')).toEqual(['', '../a.wav']);
  });

  it('leave generators, absolute paths and other values alone', () => {
    expect(written('<region> sample=*sine group_label=a/b', '..')).toEqual(['*sine', 'a/b']);
    expect(written('<region> sample=C:\\x\\a.wav', '..')).toEqual(['C:\\x\\a.wav']);
    expect(written('<region> sample=/x/a.wav', '..')).toEqual(['/x/a.wav']);
  });

  it('stay as they are in the same folder', () => {
    expect(written('<region> sample=x\\a.wav')).toEqual(['x\\a.wav']);
    expect(written('<region> sample=x\\a.wav', '')).toEqual(['x\\a.wav']);
  });
});
