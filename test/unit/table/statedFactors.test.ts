import { describe, expect, it } from 'vitest';
import { notesOf, regions } from './tableRegions';

/** A table of two zones below a text: a heading for each of the columns behind the keys, and their cells. */
function below(said: string, headings: string, ...rows: string[]): string {
  const zones = rows.map(
    (row, at) => `w${at}.wav;${36 + 6 * at};${41 + 6 * at};${38 + 6 * at};${row.replaceAll('|', ';')}`,
  );
  return [said, '', `File;Low;High;Root;${headings.replaceAll('|', ';')}`, ...zones].join('\n');
}

const levels = (text: string) => regions(text).map(({ volume }) => Number(volume ?? 0));

// A factor a of the amplitude is 20 · log10(a) dB (IEC 60027-3): 0.5 is -6.02 dB and 1.25 is 1.94 dB.
describe('a text that says that levels are factors', () => {
  it.each([
    ['Gain column is a multiplier', 'Gain'],
    ['Gain: 0 = silence, 1 = unchanged', 'Gain'],
    ['In the gain column 1.0 leaves the sample as it is.', 'Gain'],
    ['Gain as a multiple of the recorded amplitude', 'Gain'],
    ['Der Pegel ist ein Vielfaches (1 = wie aufgenommen)', 'Pegel'],
    ['Volume : coefficient, 1 = niveau d’origine', 'Volume'],
    ['El volumen es un multiplicador', 'Volumen'],
    ['O ganho é um fator', 'Ganho'],
    ['Il volume è un moltiplicatore, 1,0 = originale', 'Volume'],
    ['Volume: vermenigvuldiger (1,0 = origineel)', 'Volume'],
    ['El guany és un multiplicador', 'Guany'],
    ['Głośność jako krotność', 'Głośność'],
    ['Hlasitost: činitel (1,0 = originál)', 'Hlasitost'],
    ['Volymen är en multiplikator', 'Volym'],
    ['Lydstyrke: faktor (1 = uændret)', 'Lydstyrke'],
    ['Voimakkuus on kerroin', 'Voimakkuus'],
    ['Громкость: множитель (1 = без изменений)', 'Громкость'],
    ['Ses: katsayı (1,0 = orijinal)', 'Ses'],
    ['A hangerő szorzótényező', 'Hangerő'],
    ['Στάθμη: συντελεστής (1 = αμετάβλητη)', 'Στάθμη'],
    ['ゲイン：係数（1.0＝元のまま）', 'ゲイン'],
    ['音量は倍率です', '音量'],
    ['音量为倍数', '音量'],
    ['볼륨은 배율 (1 = 그대로)', '볼륨'],
    ['1.0 = unchanged', 'Gain'],
  ])('%s', (said, heading) => {
    expect(levels(below(said, heading, '1.0', '0.5', '1.25'))).toEqual([0, -6.02, 1.94]);
    expect(levels(below(said, heading, '1,0', '0,5', '1,25'))).toEqual([0, -6.02, 1.94]);
  });

  it.each([
    ['Level: 1 = plein niveau', 'Level'],
    ['Úroveň: 0 = ticho, 1 = plná', 'Úroveň'],
  ])('by its full level: %s', (said, heading) => {
    expect(levels(below(said, heading, '1', '0.5', '0.5'))).toEqual([0, -6.02, -6.02]);
  });

  it.each([
    'Levels of multiple microphones, mixed.',
    'Takes: 1 = original, 2 = copy',
    '1 = original\n2 = copy',
    'The level was raised by a factor of 2.',
  ])('but not one that speaks of something else: %s', (said) => {
    const text = below(said, 'Gain', '1.5', '3', '1');
    expect(levels(text)).toEqual([0, 0, 0]);
    expect(notesOf(text).join()).toMatch(/gives no unit/);
  });

  it('does not count where levels lie below 0', () => {
    const text = below('The gain came from a factor once.', 'Gain', '-6', '0', '1');
    expect(levels(text)).toEqual([-6, 0, 1]);
  });
});

describe('a sentence that gives the scales of several columns', () => {
  it.each([
    [
      'Pan: 0 = left, 50 = centre, 100 = right; gain: 1 = original; tune in semitones.',
      'Gain|Pan|Tune',
      ['1|50|0', '0.5|25|0.5'],
    ],
    [
      'Lautstärke 0 bis 1, Panorama von 0 (links) bis 100 (rechts), Stimmung in Halbtönen',
      'Lautstärke|Panorama|Stimmung',
      ['1|50|0', '0,5|25|0,5'],
    ],
    [
      'Hlasitost: 1 = beze změny. Pan: 0 = vlevo, 50 = střed, 100 = vpravo. Ladění v půltónech.',
      'Hlasitost|Pan|Ladění',
      ['1|50|0', '0,5|25|0,5'],
    ],
    [
      'Volume is a factor, pan goes from -1 to 1 and tune is a ratio (1 = as recorded).',
      'Volume|Pan|Tune',
      ['1|0|1', '0.5|-0.5|1.02930'],
    ],
  ])('%s', (said, headings, rows) => {
    const read = regions(below(said, headings, ...rows));
    expect(read.map(({ volume }) => volume)).toEqual([undefined, '-6.02']);
    expect(read.map(({ pan }) => Number(pan ?? 0))).toEqual([0, -50]);
    // Half a semitone, and a ratio of 2^(50/1200).
    expect(read.map(({ tune }) => Math.round(Number(tune ?? 0)))).toEqual([0, 50]);
  });

  it('reads a ratio that leaves a tuning as it is', () => {
    const read = regions(below('Tune: 1.0 = as recorded, 2.0 = octave up', 'Tune', '1', '2'));
    expect(read.map(({ transpose }) => transpose)).toEqual([undefined, '12']);
  });
});
