import { describe, expect, it } from 'vitest';
import { readSamplePath, writeSamplePath } from '../../../../server/vocabulary/forms/samplePath';

type Form = Omit<Parameters<typeof readSamplePath>[0], 'kind'>;
const read = (form: Form, text: string) => readSamplePath({ kind: 'path', ...form }, text);
const write = (form: Form, path: string) => writeSamplePath({ kind: 'path', ...form }, path);

/** What vocabularies put before and behind a path (docs of vocabularies); `*` names a generator in the open format (sfzformat.com, sample). */
describe('paths to audio files', () => {
  it.each<[Form, string, string]>([
    [{}, 'low/C2.wav', 'low/C2.wav'],
    [{ ending: '.wav' }, 'low/C2', 'low/C2.wav'],
    [{ folder: 'Audio' }, 'C2.wav', 'Audio/C2.wav'],
    [{ folder: 'Audio', ending: '.wav', separator: '\\' }, 'low\\C2', 'Audio/low/C2.wav'],
    [{ folder: 'Audio', ending: '.wav' }, 'low/C2.flac', 'Audio/low/C2.flac'],
    [{ folder: 'Audio' }, '../Other/C2.wav', 'Other/C2.wav'],
    [{ folder: '../Beside' }, 'C2.wav', '../Beside/C2.wav'],
    [{ folder: 'Audio' }, '/disk/C2.wav', '/disk/C2.wav'],
    [{ folder: 'Audio', ending: '.wav', separator: '\\' }, '*sine', '*sine'],
    // What ends like no audio file has the ending put behind, a dot in its name or not.
    [{ ending: '.wav' }, 'v1.2', 'v1.2.wav'],
  ])('%j: %s is %s, and back', (form, text, path) => {
    expect(read(form, text)).toBe(path);
    expect(write(form, path)).toBe(text);
  });

  it('have slashes, whichever the text has', () => {
    expect(read({}, 'low\\mid\\C2.wav')).toBe('low/mid/C2.wav');
    expect(write({}, 'low\\mid\\C2.wav')).toBe('low/mid/C2.wav');
    expect(write({ separator: '\\' }, 'low/mid/C2.wav')).toBe('low\\mid\\C2.wav');
  });

  it('keep their ending where without it they would be read as another file', () => {
    expect(write({ ending: '.wav' }, 'C2.flac.wav')).toBe('C2.flac.wav');
    expect(write({ ending: '.wav' }, '.wav')).toBe('.wav');
    expect(write({ ending: '.wav' }, 'C2.aif')).toBe('C2.aif');
  });

  it('are written by a shorter way where that leads there', () => {
    expect(write({ folder: 'Audio' }, 'Audio/low/../C2.wav')).toBe('C2.wav');
    expect(write({ folder: 'Audio' }, 'Audio/./C2.wav')).toBe('C2.wav');
  });

  it('cannot be written where no way leads back', () => {
    expect(write({ folder: '../Beside' }, 'C2.wav')).toBeUndefined();
    expect(write({ ending: '.wav' }, 'C2')).toBeUndefined();
  });
});
