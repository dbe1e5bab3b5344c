import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

/** Two zones with attributes whose names say nothing by themselves; what they hold stands in the text around. */
const zones = (first: string, second: string, around: string) =>
  `<shelf>${around}<jar wav="a.wav" ${first}/><jar wav="b.wav" ${second}/></shelf>`;

describe('names that the document explains', () => {
  it.each([
    ['two names with a stroke', '<!-- qa/qb: outermost MIDI keys -->'],
    ['two names with an equals sign', '<!-- qa/qb = lowest and highest MIDI key -->'],
    ['two names joined by a word', '<!-- qa and qb are the first and last key of a jar -->'],
    ['a text in German', '<hinweis>qa/qb: unterste und oberste Taste</hinweis>'],
    ['a text in French', '<note>qa et qb sont les touches extrêmes</note>'],
    ['a text in Spanish', '<!-- qa/qb = primera y última tecla -->'],
    ['the other way round', '<!-- qb/qa: highest and lowest key -->'],
    ['each by itself', '<!-- qa holds the lowest key; qb holds the highest key -->'],
  ])('gives the ends of a range by %s', (_, around) => {
    expect(valuesIn(zones('qa="40" qb="44"', 'qa="45" qb="52"', around), 'lokey', 'hikey')).toEqual([
      '40 44',
      '45 52',
    ]);
  });

  it('gives velocities and loops by two names', () => {
    const around = '<!-- va/vb = softest and hardest velocity; ja/jb: start and end of the loop -->';
    expect(
      valuesIn(
        zones(
          'key="40" va="1" vb="60" ja="1000" jb="5000"',
          'key="40" va="61" vb="127" ja="2000" jb="6000"',
          around,
        ),
        'lovel',
        'hivel',
        'loop_start',
        'loop_end',
      ),
    ).toEqual(['1 60 1000 5000', '61 127 2000 6000']);
  });

  it.each([
    ['struck', '<!-- zed: the MIDI key that was struck for the recording -->'],
    ['untransposed', '<!-- zed = key at which the recording plays untransposed -->'],
    ['in German', '<!-- zed: Taste, die bei der Aufnahme gespielt wurde -->'],
    ['in French', '<!-- zed = touche jouée pendant la prise -->'],
  ])('gives the root key %s', (_, around) => {
    expect(
      valuesIn(
        zones('low="40" high="44" zed="41"', 'low="45" high="50" zed="47"', around),
        'pitch_keycenter',
      ),
    ).toEqual(['41', '47']);
  });

  it.each([
    ['tenths of a dB', '<!-- lev = level in tenths of a dB -->', '-35', '-120', ['-3.5', '-12']],
    ['Zehntel', '<!-- lev: Pegel in Zehntel dB -->', '-5', '-20', ['-0.5', '-2']],
    ['dixièmes', '<!-- lev : niveau en dixièmes de dB -->', '15', '-20', ['1.5', '-2']],
    [
      'dB beside a tuning in cents',
      '<!-- lev = level in dB, ft = tuning in cents -->',
      '-3',
      '-8',
      ['-3', '-8'],
    ],
  ])('gives levels in %s', (_, around, first, second, levels) => {
    expect(valuesIn(zones(`key="40" lev="${first}"`, `key="41" lev="${second}"`, around), 'volume')).toEqual(
      levels,
    );
  });

  it('goes by the unit and not by an example in brackets', () => {
    const around = '<!-- dt is in semitones (0.10 = ten cents up) -->';
    expect(valuesIn(zones('key="40" dt="-0.12"', 'key="41" dt="0.5"', around), 'tune')).toEqual([
      '-12',
      '50',
    ]);
  });

  it('takes names in quotes with what stands right behind them', () => {
    const around =
      '<!-- "ut" ist die unterste, "ot" die oberste Taste, "st" die Taste, auf der er unverändert klingt. -->';
    expect(
      valuesIn(
        zones('ut="36" ot="42" st="40"', 'ut="43" ot="49" st="46"', around),
        'lokey',
        'hikey',
        'pitch_keycenter',
      ),
    ).toEqual(['36 42 40', '43 49 46']);
  });
});
