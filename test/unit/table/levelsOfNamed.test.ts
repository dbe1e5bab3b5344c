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
});
