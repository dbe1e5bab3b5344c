import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const velocities = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel ?? ''}-${hivel ?? ''}`);

describe('velocities that stand once for several rows, behind the keys', () => {
  it('are carried down where the names of groups stand in the same rows', () => {
    const text = table(
      'File | Low | High | Vel low | Vel high | Layer',
      'zither_a.wav | 40 | 44 | 1 | 70 | quiet',
      'zither_b.wav | 45 | 49 |  |  | ',
      'zither_c.wav | 40 | 44 | 71 | 127 | strong',
      'zither_d.wav | 45 | 49 |  |  | ',
    );
    expect(velocities(text)).toEqual(['1-70', '1-70', '71-127', '71-127']);
    expect(notesOf(text).join()).toMatch(/gives no velocities; those of the row above it are taken/);
  });

  it('are carried down where the keys without them occur in each layer', () => {
    const text = table(
      'File | Key | Vel low | Vel high',
      'zither_a.wav | 40 | 1 | 70',
      'zither_b.wav | 45 |  | ',
      'zither_c.wav | 40 | 71 | 127',
      'zither_d.wav | 45 |  | ',
    );
    expect(velocities(text)).toEqual(['1-70', '1-70', '71-127', '71-127']);
    expect(notesOf(text).join()).toMatch(/gives no velocities; those of the row above it are taken/);
  });

  it('are closed where one end alone is blank, with a note', () => {
    const text = table(
      'File | Low | High | Vel low | Vel high',
      'zither_a.wav | 40 | 44 | 1 | 70',
      'zither_b.wav | 45 | 49 | 1 | ',
      'zither_c.wav | 40 | 44 | 71 | 127',
      'zither_d.wav | 45 | 49 | 71 | ',
    );
    expect(velocities(text)).toEqual(['1-70', '1-70', '71-127', '71-127']);
    expect(notesOf(text).join()).toMatch(/"Vel high": the cell is empty; velocity 70 is taken/);
    const lows = table(
      'File | Key | Vel low | Vel high',
      'zither_a.wav | 40 |  | 70',
      'zither_b.wav | 40 |  | 127',
    );
    expect(velocities(lows)).toEqual(['-70', '71-127']);
  });

  it('stay open where no layer follows', () => {
    const text = table(
      'File | Key | Vel low | Vel high',
      'zither_a.wav | 40 | 1 | 70',
      'zither_b.wav | 40 | 71 | ',
    );
    expect(velocities(text)).toEqual(['1-70', '71-']);
  });

  it('are all of them where nothing says so, with a note', () => {
    const text = table(
      'File | Low | High | Vel low | Vel high',
      'zither_a.wav | 40 | 44 | 1 | 70',
      'zither_b.wav | 45 | 49 |  | ',
    );
    expect(velocities(text)).toEqual(['1-70', '-']);
    expect(notesOf(text).join()).toMatch(/gives no velocities, so its region plays at all of them/);
  });
});

describe('the mark in milliseconds', () => {
  const starts = (...cells: string[]) =>
    regions(
      table(
        'File | Root | Loop start (ms) | Loop end (ms)',
        ...cells.map((cell, at) => `a${at}.wav | ${60 + at} | ${cell}`),
      ),
      { rateOf: () => 1000 },
    ).map((region) => `${region.loop_start} ${region.loop_end}`);

  // 100.000 ms read as thousands would be a minute and forty seconds.
  it('is a decimal one where the sample would last longer than a minute else', () => {
    expect(starts('100.000 | 500.000', '50.000 | 300.000')).toEqual(['100 500', '50 300']);
    expect(starts('100,000 | 500,000', '50,000 | 300,000')).toEqual(['100 500', '50 300']);
  });

  it('parts thousands where a sample may last as long', () => {
    expect(starts('1.500 | 3.250', '2.000 | 4.500')).toEqual(['1500 3250', '2000 4500']);
  });
});

const switchesOf = (text: string) => regions(text).map((region) => region.sw_last);

describe('key switches that stand once for several rows', () => {
  it('are carried down where the names of groups stand in the same rows', () => {
    const text = table(
      'Switch key | Technique | File | Low | High',
      '12 | bowed | saw_a.wav | 40 | 44',
      ' |  | saw_b.wav | 45 | 49',
      '13 | struck | saw_c.wav | 40 | 47',
      ' |  | saw_d.wav | 48 | 52',
    );
    expect(switchesOf(text)).toEqual(['12', '12', '13', '13']);
    expect(notesOf(text).join()).toMatch(/gives no key switch; that of the row above it is taken/);
  });

  it('are carried down where the keys without them occur under each', () => {
    const text = table(
      'File | Low | High | Keyswitch',
      'saw_a.wav | 40 | 44 | 12',
      'saw_b.wav | 45 | 49 | ',
      'saw_c.wav | 40 | 44 | 13',
      'saw_d.wav | 45 | 49 | ',
    );
    expect(switchesOf(text)).toEqual(['12', '12', '13', '13']);
  });

  it('are carried down within a group, and no further', () => {
    const text = table(
      'File | Low | High | Group | Keyswitch',
      'saw_a.wav | 40 | 44 | bowed | 12',
      'saw_b.wav | 45 | 49 | bowed | ',
      'saw_c.wav | 40 | 47 | struck | 13',
      'clack.wav | 30 | 39 | noise | ',
    );
    expect(switchesOf(text)).toEqual(['12', '12', '13', undefined]);
  });

  it('are none for rows on other keys where nothing says so', () => {
    const text = table(
      'File | Low | High | Keyswitch',
      'saw_a.wav | 40 | 44 | 12',
      'saw_b.wav | 40 | 44 | 13',
      'clack.wav | 30 | 39 | ',
    );
    expect(switchesOf(text)).toEqual(['12', '13', undefined]);
    expect(notesOf(text).join()).toMatch(/gives no key switch, so its region sounds whichever is pressed/);
  });
});
