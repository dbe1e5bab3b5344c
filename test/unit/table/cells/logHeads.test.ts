import { describe, expect, it } from 'vitest';
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
});
