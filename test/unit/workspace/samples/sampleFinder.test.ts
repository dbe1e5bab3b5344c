import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mainSpan } from '../../../../server/model/text/span';
import { SampleFinder } from '../../../../server/workspace/samples/sampleFinder';
import { notesOnSamples, questionOf } from '../../../../server/workspace/samples/sampleNotes';

const files = [
  '/music/Samples/bell C#4 soft.wav',
  '/music/Samples/bell A4 soft.wav',
  '/music/Samples/Glocke grün.flac',
  '/music/Samples/left/stroke.wav',
  '/music/Samples/right/stroke.wav',
  '/music/stroke.wav',
  '/music/other/hammered_string_1.wav',
];
const finder = () => new SampleFinder(files, '/music');

describe('finding samples by the names of a table', () => {
  it.each([
    ['bell C#4 soft.wav', 'exact', files[0]],
    ['BELL c#4 Soft.WAV', 'case', files[0]],
    ['bell A4 soft', 'ending', files[1]],
    ['bell A4 soft.aif', 'ending', files[1]],
    ['bell_A4-soft.wav', 'characters', files[1]],
    ['bell_Cs4_soft.wav', 'characters', files[0]],
    ['glocke_grun.flac', 'characters', files[2]],
    ['hammred string 1.wav', 'nearest', files[6]],
    // Of another machine's path the folders next to the name still tell which one is meant.
    ['C:\\takes\\left\\stroke.wav', 'exact', files[3]],
    ['C:\\takes\\Right\\stroke', 'ending', files[4]],
    ['C:\\takes\\middle\\stroke.wav', 'exact', files[5]],
    ['left\\stroke.wav', 'exact', files[3]],
    ['../Samples/right/stroke.wav', 'exact', files[4]],
  ])('%s is found: %s', (name, match, path) => {
    const found = finder().look(name);
    expect(found.match).toBe(match);
    expect(found.paths[0]).toBe(path);
  });

  it('never takes a file whose key, number or short word differs', () => {
    for (const name of ['bell B4 soft.wav', 'bell A5 soft.wav', 'hammered_string_2.wav']) {
      const found = finder().look(name);
      expect(found.paths, name).toEqual([]);
      expect(found.nearest.length, name).toBeGreaterThan(0);
    }
    expect(finder().look('*sine')).toEqual({ paths: [], match: undefined, nearest: [] });
    expect(finder().look('')).toEqual({ paths: [], match: undefined, nearest: [] });
  });

  it('finds every file by its own name, by its stem and in capitals', () => {
    const word = fc.stringMatching(/^[a-z0-9 _#äé-]{1,12}$/);
    fc.assert(
      fc.property(fc.uniqueArray(word, { minLength: 1, maxLength: 12 }), (words) => {
        const paths = words.map((one) => `/music/${one}.wav`);
        const one = new SampleFinder(paths, '/music');
        for (const [at, name] of words.entries()) {
          expect(one.look(`${name}.wav`)).toMatchObject({ paths: [paths[at]], match: 'exact' });
          expect(one.find(name)[0]).toBe(paths[at]);
          expect(one.find(`${name.toUpperCase()}.WAV`)[0]).toBe(paths[at]);
        }
      }),
    );
  });
});

describe('what is said of samples', () => {
  const question = (name: string) => questionOf(name, finder().look(name), '/music');

  it('asks nothing where one file bears the name', () => {
    expect(question('bell C#4 soft.wav')).toBeUndefined();
    expect(question('left/stroke.wav')).toBeUndefined();
    expect(question('nothing like it at all.wav')).toBeUndefined();
  });

  it('lists the choices where several bear it, where it was altered and where it is only near', () => {
    expect(question('stroke.wav')?.question).toEqual({
      name: 'stroke.wav',
      choices: ['stroke.wav', 'Samples/left/stroke.wav', 'Samples/right/stroke.wav'],
      taken: 'stroke.wav',
    });
    expect(question('stroke.wav')?.message).toMatch(/3 files named "stroke.wav"/);
    expect(question('bell_A4_soft.wav')?.message).toMatch(/Samples\/bell A4 soft\.wav was taken/);
    const near = question('bell B4 soft.wav');
    expect(near?.question.taken).toBeUndefined();
    expect(near?.question.choices[0]).toBe('Samples/bell A4 soft.wav');
    expect(near?.message).toMatch(/kept as it is/);
  });

  it('counts what would be very many notes', () => {
    const messages = Array.from({ length: 70 }, (_, at) => ({ name: `${at}.wav`, message: `Note ${at}.` }));
    const notes = notesOnSamples(messages, () => mainSpan(0, 1));
    expect(notes).toHaveLength(50);
    expect(notes[49]?.message).toMatch(/^Note 49\. .*20 more samples/);
  });
});
