import { describe, expect, it } from 'vitest';
import { regions, table } from './tableRegions';

describe('rows that give either one key or a range of keys', () => {
  const expected = [
    { sample: 'boom.wav', key: '36' },
    { sample: 'tick.wav', key: '42' },
    { sample: 'bowl.wav', lokey: '60', hikey: '65', pitch_keycenter: '62' },
  ];

  it('are read each by its own in a table', () => {
    const text = table(
      'File | Key | Low | High | Root',
      'boom.wav | 36 | | | ',
      'tick.wav | 42 | | | ',
      'bowl.wav | | 60 | 65 | 62',
    );
    expect(regions(text)).toMatchObject(expected);
  });

  it('are read each by its own in JSON lines, whatever the type of the numbers', () => {
    const text = [
      '{"file":"boom.wav","key":"36"}',
      '{"file":"tick.wav","key":42,"pan":"-0.5"}',
      '{"file":"bowl.wav","lokey":60,"hikey":"65","root":62,"pan":0.5}',
    ].join('\n');
    expect(regions(text)).toMatchObject(expected);
    expect(regions(text).map(({ pan }) => pan)).toEqual([undefined, '-50', '50']);
  });

  it('still take a key beside ranges for the root', () => {
    const text = table('File | Key | Low | High', 'a.wav | 62 | 60 | 65', 'b.wav | 68 | 66 | 70');
    expect(regions(text)[0]).toMatchObject({ lokey: '60', hikey: '65', pitch_keycenter: '62' });
  });
});

it('takes no velocities or keys from the object above, as objects stand for themselves', () => {
  const text = [
    '[{"file":"soft.wav","vel":"1-80","key":36},',
    '{"file":"hard.wav","vel":"81-127","key":36},',
    '{"file":"other.wav","key":38}]',
  ].join('\n');
  expect(regions(text)[2]).toMatchObject({ sample: 'other.wav', key: '38' });
  expect(regions(text)[2]).not.toHaveProperty('lovel');
});
