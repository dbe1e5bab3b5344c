import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

/** The levels of the first and the second file of a row. */
const beside = (said: string, first: string, second: string) => {
  const rows = table(
    `Low | High | Root | ${first} | ${second}`,
    '43 | 47 | 45 | lute_45_a.wav | lute_45_b.wav',
    '48 | 52 | 50 | lute_50_a.wav | lute_50_b.wav',
  );
  const text = `${said}\n\n${rows}`;
  const levelsOf = (end: string) =>
    regions(text)
      .filter(({ sample }) => sample?.endsWith(end))
      .map(({ volume }) => Number(volume ?? 0));
  return { levels: [levelsOf('_a.wav'), levelsOf('_b.wav')], notes: notesOf(text).join('\n') };
};

describe('a level that a sentence gives the zones of a column', () => {
  it.each([
    ['The far files all go 4 dB down, the near ones stay.', 'Near mic', 'Far mic'],
    ['The far mics are lower than the near mics by 4 dB.', 'Near', 'Far'],
    ['Compared to the near mics, the far ones sit 4 dB down.', 'Near mic', 'Far mic'],
    ['Leave the near mics alone and drop the far mics by 4 dB.', 'Near', 'Far'],
    ['Far: -4 dB.', 'Near', 'Far'],
    ['Die Raumdateien liegen 4 dB unter den nahen.', 'Nah', 'Raum'],
    ['Das Raummikrofon ist gegenüber dem Nahmikrofon um 4 dB abgesenkt.', 'Nahmikrofon', 'Raummikrofon'],
    ['Les fichiers d’ambiance sont 4 dB plus bas que ceux de proximité.', 'Proximité', 'Ambiance'],
    ['Los archivos de sala van 4 dB por debajo de los cercanos.', 'Micro cercano', 'Micro sala'],
    ['I file della sala suonano 4 dB sotto quelli vicini.', 'Microfono vicino', 'Microfono sala'],
    ['Os ficheiros da sala ficam 4 dB abaixo dos próximos.', 'Próximo', 'Sala'],
    ['De ruimtemicrofoons staan 4 dB zachter dan de dichtbije.', 'Dichtbij', 'Ruimte'],
    ['Rumsfilerna ska ner 4 dB, de nära lämnas orörda.', 'Nära', 'Rum'],
    ['Huonemikrofonit ovat 4 dB hiljaisempia kuin lähimikrofonit.', 'Lähimikrofoni', 'Huonemikrofoni'],
    ['Mikrofon dalszy jest o 4 dB ciszej niż bliski.', 'Bliski', 'Dalszy'],
    ['Файлы зала тише ближних на 4 дБ.', 'Ближний микрофон', 'Микрофон зала'],
    ['The far takes are 4 dB softer (-4 dB), the near takes stay at 0 dB.', 'Near', 'Far'],
    ['Turn the far mic down by 4 dB (so −4 dB).', 'Near', 'Far'],
    ['Far is 4.0 dB down, i.e. -4 dB', 'Near', 'Far'],
    ['Near 0 dB / Far -4 dB', 'Near', 'Far'],
    ['The far takes –4 dB, near 0 dB', 'Near', 'Far'],
    ['Raum wird um 4 dB abgesenkt (−4 dB), Nah bleibt bei 0 dB', 'Nah', 'Raum'],
    ['Les fichiers salle sont tous 4 dB plus bas (-4 dB).', 'Proche', 'Salle'],
    ['Pliki sala są o 4 dB ciszej (-4 dB), pliki blisko zostają na 0 dB.', 'Blisko', 'Sala'],
    ['ルームは近接より4 dB小さくします。', '近接マイク', 'ルームマイク'],
    ['房间话筒比近距离话筒低4 dB。', '近距离', '房间'],
  ])('is added: %s', (said, first, second) => {
    const { levels, notes } = beside(said, first, second);
    expect(levels).toEqual([
      [0, 0],
      [-4, -4],
    ]);
    expect(notes).toMatch(/4 dB is taken off the level of 2 zones, those of the group/);
  });

  it('is one of each clause', () => {
    const { levels } = beside('The far takes are 3 dB quieter and the mid takes 1.5 dB.', 'Mid', 'Far');
    expect(levels).toEqual([
      [-1.5, -1.5],
      [-3, -3],
    ]);
  });

  it.each([
    ['Near and far differ by 6 dB.', /how much is added or taken off/],
    ['The far files were recorded 6 dB lower.', /done already|how loud the samples are/],
    ['Far went from -6 dB to 6 dB.', /how much is added or taken off/],
    ['The far files are 6 dB louder (-6 dB).', /how much is added or taken off/],
    ['The far files are 6 dB lower (peak -6 dB).', /how loud the samples are/],
    ['Far peaks at -6 dB.', /how loud the samples are/],
    ['The far files are 6 dB too loud.', /how loud the samples are/],
    ['Near and far go 6 dB down.', /which zones are meant/],
  ])('is left, with a note, where it stays open: %s', (said, why) => {
    const { levels, notes } = beside(said, 'Near mic', 'Far mic');
    expect(levels.flat()).toEqual([0, 0, 0, 0]);
    expect(notes).toMatch(why);
  });

  it('is not added to what a heading or the rows give already', () => {
    const rows = table(
      'File | Root | Group | Level',
      'x1.wav | 60 | staccato | -3',
      'x2.wav | 60 | sustain | 0',
    );
    const levels = (said: string) => regions(`${said}\n\n${rows}`).map(({ volume }) => Number(volume ?? 0));
    expect(levels('Sustain sits at 0 dB, staccato at -3 dB.')).toEqual([-3, 0]);
    expect(levels('The staccato samples go another 2 dB down.')).toEqual([-5, 0]);
    expect(beside('', 'Near', 'Far, mixed at -6 dB').levels).toEqual([
      [0, 0],
      [-6, -6],
    ]);
  });

  it('is not that of a heading once more, whatever the level of its row', () => {
    const text = table('Low | High | Root | Near | Far (-6 dB) | Level', '43 | 47 | 45 | a.wav | b.wav | -1');
    expect(regions(text).map(({ volume }) => volume)).toEqual(['-1', '-7']);
  });

  it('goes by sides, by releases and by the letters of dynamics', () => {
    const sides = table('Key | Left | Right', '45 | a_1.wav | b_1.wav', '50 | a_2.wav | b_2.wav');
    const left = regions(`The left channel is 1 dB louder than the right one.\n\n${sides}`);
    expect(left.map(({ volume, pan }) => [volume ?? 0, pan].join(' ')).sort()).toEqual([
      '0 100',
      '0 100',
      '1 -100',
      '1 -100',
    ]);
    const layers = table('File | Root | Layer', 'a.wav | 60 | pp', 'b.wav | 60 | ff');
    const said = 'The pp layer is 3 dB quieter.';
    expect(regions(`${said}\n\n${layers}`).map(({ volume }) => Number(volume ?? 0))).toEqual([-3, 0]);
    const releases = table('File | Key | Trigger', 'a.wav | 60 | attack', 'b.wav | 60 | release');
    expect(
      regions(`Release samples: -9 dB.\n\n${releases}`).map(({ volume }) => Number(volume ?? 0)),
    ).toEqual([0, -9]);
  });

  it('is left where the next clause makes an exception, unless that is of other zones', () => {
    const rows = ['a.wav | 60 | near', 'b.wav | 60 | far', 'c.wav | 62 | far'];
    const read = (said: string) =>
      regions(`${said}\n\n${table('File | Root | Mic', ...rows)}`).map(({ volume }) => Number(volume ?? 0));
    expect(read('The far files go 4 dB down, not the near ones.')).toEqual([0, -4, -4]);
    expect(read('The far files go 4 dB down, but not the first one.')).toEqual([0, 0, 0]);
  });

  it('goes by words in names where no group has them', () => {
    const rows = table(
      'File | Root | Low | High',
      'g_60_near.wav | 60 | 58 | 62',
      'g_60_far.wav | 60 | 58 | 62',
    );
    const read = (said: string) => regions(`${said}\n\n${rows}`).map(({ volume }) => Number(volume ?? 0));
    expect(read('The "far" samples, please, 3 dB quieter.')).toEqual([0, -3]);
    expect(read('The g files are 3 dB quieter.')).toEqual([0, 0]);
  });

  it.each([
    ['All *_x.wav takes: -3 dB.', [0, -3]],
    ['Takes ending in _x go 3 dB down', [0, -3]],
    ['The x files are 3 dB softer than the n files.', [0, -3]],
    ['"_x" = mic outside, -3 dB; "_n" = mic inside, 0 dB', [0, -3]],
    ['Dateien, die auf _x enden, 3 dB leiser.', [0, -3]],
    ['Les fichiers « x » sont 3 dB plus bas (-3 dB).', [0, -3]],
    ['Los archivos con "x" van a -3 dB.', [0, -3]],
    ['The y files go 3 dB down.', [0, 0]],
  ])('goes by parts of names that are written as such: %s', (said, levels) => {
    const rows = table('File | Root | Low | High', 'g_60_n.wav | 60 | 58 | 62', 'g_60_x.wav | 60 | 58 | 62');
    expect(regions(`${said}\n\n${rows}`).map(({ volume }) => Number(volume ?? 0))).toEqual(levels);
  });
});
