import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const values = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter: root, volume = '-' }) =>
    [sample, lokey, hikey, root, volume].join(' '),
  );
const expected = ['a 1.wav 48 57 55 -2', 'b 2.wav 58 62 60 -'];

describe('a list copied from a terminal', () => {
  it.each([
    [
      'me@host:~/x$ cat -n zones',
      '     1\t# file = low..high @root gain',
      '     2\ta 1.wav = 48..57 @55 -2.0dB',
      '     3\tb 2.wav = 58..62 @60 0dB',
      'me@host:~/x$',
    ],
    ['1:file,lo,hi,root,level dB', '2:a 1.wav,48,57,55,-2', '3:b 2.wav,58,62,60,0'],
    ['$ cat zones', 'a 1.wav lo=48 hi=57 root=55 gain=-2dB', 'b 2.wav lo=58 hi=62 root=60 gain=0dB'],
    ['a 1.wav (48-57) root 55, -2 dB', 'b 2.wav (58-62) root 60'],
  ])('%s', (...lines) => {
    expect(values(lines.join('\n'))).toEqual(expected);
  });

  it('keeps numbers that do not count lines', () => {
    const kit = '36: kick.wav\n38: snare.wav\n42: hat.wav';
    expect(regions(kit).map(({ key }) => key)).toEqual(['36', '38', '42']);
  });
});

describe('names of several words on lines some of which lack a value', () => {
  it('stay whole, where columns stand below one another and where they do not', () => {
    const placed = [
      'Sample          Lo  Hi  Root  Tune  Vol',
      'flute C4.wav    58  62  60    +4    -1.5',
      'flute F4.wav    63  67  65          -2.0',
      'flute A4.wav    68  75  69    -6',
    ].join('\n');
    const found = regions(placed).map(
      ({ sample, tune = '-', volume = '-' }) => `${sample} ${tune} ${volume}`,
    );
    expect(found).toEqual(['flute C4.wav 4 -1.5', 'flute F4.wav - -2', 'flute A4.wav -6 -']);
    const single = [placed, 'flute D5.wav 76 79 77 +1 -1.0', 'flute G5.wav 80 84 82 +2 -1.0']
      .join('\n')
      .replace(/ +/g, ' ');
    expect(regions(single).map(({ sample, lokey }) => `${sample} ${lokey}`)).toEqual([
      'flute C4.wav 58',
      'flute F4.wav 63',
      'flute A4.wav 68',
      'flute D5.wav 76',
      'flute G5.wav 80',
    ]);
  });
});
