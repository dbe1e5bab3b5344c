import { describe, expect, it } from 'vitest';
import { meaningsOf } from '../../../../server/vocabulary/infer/words/meanings';
import { nameWords } from '../../../../server/vocabulary/infer/words/nameWords';
import { readInferred, valuesIn } from './inferred';

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

describe('values that tell what names leave open', () => {
  const zones = (at: (low: number) => string) =>
    `<q>${[40, 45, 50, 55].map((low) => `<n wav="${low}.wav" ${at(low)}/>`).join('')}</q>`;

  const decided = (text: string) =>
    readInferred(text)
      .decisions.map(({ message }) => message)
      .join('\n');

  it.each(['middle', 'Mitte', 'zorp'])('a root key between both ends of a range in one text: %s', (name) => {
    const text = zones((low) => `keys="${low}÷${low + 4}" ${name}="${low + 2}"`);
    expect(valuesIn(text, 'lokey', 'hikey', 'pitch_keycenter').slice(0, 2)).toEqual(['40 44 42', '45 49 47']);
    expect(decided(text)).toContain(`"${name}" of <n> is the root key`);
    // Outside one range it is none.
    expect(valuesIn(text.replace('="42"', '="99"'), 'pitch_keycenter')[0]).toBe('-');
  });

  it('the upper end called over, the lower one under', () => {
    const text = zones((low) => `under="${low}" over="${low + 4}"`);
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel').slice(0, 2)).toEqual(['40 44 -', '45 49 -']);
    expect(decided(text)).toContain('"over" of <n> is the high key');
  });

  it('keys by name and number on an element around regions, which tell the octave', () => {
    const text =
      '<k on="C1 (36)"><t wav="a.wav" strength="1..60"/><t wav="b.wav" strength="61..127"/></k><k on="A1"><t wav="c.wav" strength="1..127"/></k>';
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel')).toEqual(['36 36 1', '36 36 61', '45 45 1']);
    expect(decided(text)).toContain('"on" of <k> is the key');
  });

  it('who silences whom by name, where several outermost elements stand beside each other', () => {
    const text =
      '<k on="C1 (36)"><t wav="a.wav"/></k><k on="A1" mutedBy="glass" family="glass"><t wav="b.wav"/><t wav="c.wav"/></k>';
    expect(valuesIn(text, 'lokey', 'off_by')).toEqual(['36 -', '45 1', '45 1']);
  });

  it('a place between two sides, and none where numbers count frames', () => {
    const at = (place: (low: number) => number) =>
      zones((low) => `lokey="${low}" hikey="${low + 4}" place="${place(low)}"`);
    expect(
      valuesIn(
        at((low) => (low - 45) / 10),
        'pan',
      ),
    ).toEqual(['-50', '0', '50', '100']);
    expect(
      valuesIn(
        at((low) => low * 100),
        'pan',
      )[0],
    ).toBe('-');
  });

  it('one number with a comma and a unit, which is no range', () => {
    const text = zones((low) => `lokey="${low}" hikey="${low + 4}" sterkte="-4,5 dB"`);
    expect(valuesIn(text, 'lokey', 'lovel', 'hivel', 'volume')[0]).toBe('40 - - -4.5');
  });

  it.each(['ground', 'lowest'])('the low end of all steps on the element around them: %s', (name) => {
    const text = `<f><s ${name}="26"><n wav="a.wav" upto="30"/><n wav="b.wav" upto="37"/><n wav="c.wav" upto="44"/></s><s ${name}="50"><n wav="d.wav" upto="55"/><n wav="e.wav" upto="60"/></s></f>`;
    expect(valuesIn(text, 'lokey', 'hikey')).toEqual(['26 30', '31 37', '38 44', '50 55', '56 60']);
  });

  it('a level in percent, which is no time, and ranges of sol-fa names', () => {
    const text =
      '<c><g><env attaque="350" maintien="70 %" unite="ms"/><n son="a.wav" rango="Re#2 - Sol#2" nota="40"/></g><g><env attaque="5" maintien="0 %" unite="ms"/><n son="b.wav" rango="La2 - Do#3" nota="45"/></g></c>';
    expect(valuesIn(text, 'lokey', 'hikey', 'ampeg_hold', 'ampeg_sustain')).toEqual([
      '39 44 - 70',
      '45 49 - 0',
    ]);
  });
});
