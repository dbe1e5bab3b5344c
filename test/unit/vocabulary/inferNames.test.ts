import { describe, expect, it } from 'vitest';
import { meaningsOf } from '../../../server/vocabulary/infer/words/meanings';
import { nameWords } from '../../../server/vocabulary/infer/words/nameWords';

/** What the likeliest meaning of a path such as `keys/from` is. */
function meaning(path: string): string | undefined {
  const names = path.split('/').map(nameWords);
  return meaningsOf(names.at(-1) ?? [], names.slice(0, -1), ['pot'])[0]?.target;
}

describe('the words of a name', () => {
  it.each([
    ['lowKey', ['low', 'key']],
    ['MIDIKeyLow', ['midi', 'key', 'low']],
    ['low-key', ['low', 'key']],
    ['LOW_KEY', ['low', 'key']],
    ['Low.Key', ['low', 'key']],
    ['a:lowKey', ['low', 'key']],
    ['key2', ['key', '2']],
    ['notaMínima', ['nota', 'minima']],
    ['größteTaste', ['grosste', 'taste']],
  ])('%s', (name, words) => {
    expect(nameWords(name)).toEqual(words);
  });
});

// Common practice: trade words for what the open SFZ format calls lokey, hikey and so on, in many spellings.
describe('the meaning of names', () => {
  it.each([
    [
      'lokey',
      'lowKey keyLo loKey key_min note-low keyFrom lowestKey keys/low key/from notes/first tasteUnten notaMinima',
    ],
    ['hikey', 'highKey keyHi key_max noteHigh keyTo highestKey keys/to range/high oberste-taste notaMaxima'],
    [
      'pitch_keycenter',
      'root rootKey base-note unity originalPitch keyCentre refKey keys/root grundton fondamentale',
    ],
    ['lovel', 'velLow minVel softest velocity/low dynamics/from anschlagVon velocidadMin'],
    ['hivel', 'velHigh maxVel loudest velocity/high dynamics/to anschlagBis velocidadMax'],
    ['volume', 'volume gainDb level loudness VolumeInDecibels pegel niveau output/level'],
    ['attenuation', 'attenuation atten attenuationDb'],
    ['pan', 'pan panning balance stereoPosition pan-percent'],
    ['tune', 'tune detune cents fineTune tuning/cents DetuneInCents pitch/fine pitchOffset'],
    ['transpose', 'transpose coarse semitones coarseTune'],
    ['offset', 'offset sampleStart startFrame StartInSamples play/from'],
    ['end', 'end sampleEnd endFrame play/to'],
    ['loop_start', 'loopStart loop/from loop_begin loop/in schleifenanfang sustainLoop/start'],
    ['loop_end', 'loopEnd loop/to loop_finish loop/out schleifenende'],
    ['loop_length', 'loopLength loop/size'],
    ['loop', 'loop looped loopMode loop/type loop/enabled schleife/an'],
    ['seq_position', 'rrPosition roundRobinIndex turn/position'],
    ['seq_length', 'rrLength roundRobinCount turn/of'],
    ['trigger', 'trigger playedOn startsOn triggerMode'],
    ['off_by', 'offBy cut-by silencedBy'],
    ['ampeg_attack', 'attack attackTime env/attack AttackTimeInMilliseconds'],
    ['ampeg_release', 'release env/release'],
    ['sample', 'file path wave audioFile src fichier archivo'],
  ])('%s', (target, names) => {
    expect(names.split(' ').map((name) => [name, meaning(name)])).toEqual(
      names.split(' ').map((name) => [name, target]),
    );
  });

  it('is none for other words', () => {
    for (const name of [
      'id',
      'colour',
      'author',
      'comment',
      'glaze',
      'x',
      'lfoRate',
      'weather',
      'tonnage',
      '',
      '12',
    ]) {
      expect([name, meaning(name)]).toEqual([name, undefined]);
    }
  });
});
