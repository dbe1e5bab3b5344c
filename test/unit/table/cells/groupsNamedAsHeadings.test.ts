import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample, key, trigger = 'attack' }) => `${sample} ${key} ${trigger}`);

describe('a table whose groups are named as headings are', () => {
  it.each([
    ['Layer', 'Attack', 'Release'],
    ['Type', 'Attack', 'Release'],
    ['Group', 'Sustain', 'Release'],
    ['Kind', 'Attack', 'Note off'],
  ])('keeps its rows: %s with %s and %s', (heading, press, release) => {
    const text = table(
      `${heading} | File | Key`,
      `${press} | harp1.wav | 52`,
      `${release} | harp2.wav | 52`,
      `${press} | harp3.wav | 57`,
      `${release} | harp4.wav | 57`,
    );
    expect(zones(text).sort()).toEqual([
      'harp1.wav 52 attack',
      'harp2.wav 52 release',
      'harp3.wav 57 attack',
      'harp4.wav 57 release',
    ]);
  });

  it.each([
    ['with endings', '.wav'],
    ['without endings', ''],
  ])('keeps its rows where no group comes twice, of samples %s', (_, ending) => {
    const rows = ['Low', 'High', 'Root'].map(
      (group, at) => `${group} | lyre_${at}${ending} | ${40 + 5 * at}`,
    );
    expect(zones(table('Group | Sample | Key', ...rows))).toEqual([
      `lyre_0${ending} 40 attack`,
      `lyre_1${ending} 45 attack`,
      `lyre_2${ending} 50 attack`,
    ]);
  });

  it('is told from one that has a column for each zone', () => {
    const turned = table(
      'Group | Bowed | Plucked | Struck',
      'Sample | l1.wav | l2.wav | l3.wav',
      'Low | 40 | 45 | 50',
      'High | 44 | 49 | 54',
    );
    expect(regions(turned).map(({ sample, lokey, hikey }) => [sample, lokey, hikey])).toEqual([
      ['l1.wav', '40', '44'],
      ['l2.wav', '45', '49'],
      ['l3.wav', '50', '54'],
    ]);
  });
});
