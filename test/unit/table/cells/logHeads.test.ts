import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { regions } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(
    ({ sample, lokey, hikey, pitch_keycenter: root, tune = '-', volume = '-' }) =>
      `${sample} ${lokey} ${hikey} ${root} ${tune} ${volume}`,
  );
const fields = [
  'n=1 file="crumhorn low.wav" keys=40..45 root=42 tune=+0c gain=0.0dB',
  'n=2 file="crumhorn mid.wav" keys=46..51 root=48 tune=-6c gain=-1.5dB',
  'n=3 file="crumhorn top.wav" keys=52..60 root=55 tune=+4c gain=0.0dB',
];

describe('lines of a log', () => {
  it.each([
    [
      '[09:15:02.120] DEBUG load  ',
      '[09:15:02.001] INFO  starting, 48000 Hz',
      '[09:15:09.300] MIDI  note on 61 vel 90',
    ],
    [
      '2021-04-03 09:15:02,120 INFO sampler: ',
      '2021-04-03 09:15:01 WARN disk slow (12 ms)',
      '2021-04-03 09:15:10 INFO bye',
    ],
    ['2021-04-03T09:15:02.120Z ', '2021-04-03T09:15:01.120Z start', '2021-04-03T09:15:03.120Z 3 zones'],
    ['[   12.004512] zone ', '[   11.804512] engine up', '[   14.004512] engine down'],
    [
      '[09:15:02] LOAD ',
      '[09:15:02] up\n[09:15:02] midi open\n[09:15:02] audio open',
      '[09:15:02] one\n[09:15:02] two\n[09:15:02] three',
    ],
  ])('give zones by their fields behind "%s"', (head, before, behind) => {
    const text = [before, ...fields.map((one) => head + one), behind].join('\n');
    expect(zones(text)).toEqual([
      'crumhorn low.wav 40 45 42 - -',
      'crumhorn mid.wav 46 51 48 -6 -1.5',
      'crumhorn top.wav 52 60 55 4 -',
    ]);
  });

  const named = (head: (at: number) => string) =>
    ['crumhorn_low', 'crumhorn_mid', 'crumhorn_top']
      .map((name, at) => `${head(at)}${name}.wav lo=${40 + at * 6} hi=${45 + at * 6} root=${42 + at * 6}`)
      .join('\n');

  it.each([
    ['a time and a word', (at: number) => `[09:15:0${at}] loaded `],
    ['a day, a time, a level and a word', (at: number) => `2021-04-03 09:15:0${at} INFO mapping `],
    ['a time without seconds', (at: number) => `09:1${at} zone ${at + 1}: `],
    ['a level', (at: number) => (at === 1 ? '[WARN] ' : '[INFO] ')],
    ['a word with a colon', () => 'import: '],
    ['a level before a field', (at: number) => `[INFO] zone ${at + 1}: sample=`],
    ['nothing', () => ''],
  ])('give zones by the name of a file and what follows it, behind %s', (_, head) => {
    const text = named(head);
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(zones(text)).toEqual([
      'crumhorn_low.wav 40 45 42 - -',
      'crumhorn_mid.wav 46 51 48 - -',
      'crumhorn_top.wav 52 57 54 - -',
    ]);
  });

  it('leaves opcodes of SFZ without a header alone', () => {
    expect(looksLikeZoneTable('sample=a.wav lokey=40 hikey=45\nsample=b.wav lokey=46 hikey=51\n')).toBe(
      false,
    );
  });
});

describe('a log of opcodes', () => {
  it('gives zones, though its lines assign values as code does', () => {
    const line = (at: number, file: string, low: number, high: number) =>
      `10:14:0${at}.${at}07 INFO  region ${at}: sample=/reeds/${file}.wav lokey=${low} hikey=${high} pitch_keycenter=${low + 2} tune=${at} volume=0`;
    const text = ['10:14:00.001 INFO  opening "Regal"', line(1, 'r1', 40, 44), line(2, 'r2', 45, 50)].join(
      '\n',
    );
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(zones(text)).toEqual(['/reeds/r1.wav 40 44 42 1 -', '/reeds/r2.wav 45 50 47 2 -']);
  });
});
