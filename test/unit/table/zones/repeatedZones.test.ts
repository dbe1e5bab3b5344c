import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const samples = (text: string) => regions(text).map(({ sample }) => sample);
const head = 'File | Low | High | Root | LoVel | HiVel';

describe('rows that repeat another one to the letter', () => {
  it('are one zone, and told with the line that they repeat', () => {
    const text = table(
      head,
      'saz_a.wav | 30 | 35 | 33 | 1 | 127',
      'saz_b.wav | 36 | 41 | 38 | 1 | 90',
      'saz_a.wav | 30 | 35 | 33 | 1 | 127',
      'saz_b.wav | 36 | 41 | 38 | 91 | 127',
      'saz_c.wav | 42 | 47 | 44 | 1 | 127',
      'saz_c.wav | 48 | 50 | 44 | 1 | 127',
    );
    expect(regions(text).map(({ sample, lokey, lovel }) => [sample, lokey, lovel])).toEqual([
      ['saz_a.wav', '30', '1'],
      ['saz_b.wav', '36', '1'],
      ['saz_b.wav', '36', '91'],
      ['saz_c.wav', '42', '1'],
      ['saz_c.wav', '48', '1'],
    ]);
    expect(notesOf(text).join('\n')).toMatch(/Line 4 repeats line 2 \("saz_a.wav"\) .* made once/);
  });

  it('may differ in the number of the row', () => {
    const text = table(
      '# | File | Root',
      '1 | saz_a.wav | 40',
      '2 | saz_b.wav | 44',
      '3 | saz_b.wav | 44',
      '4 | saz_c.wav | 48',
    );
    expect(samples(text)).toEqual(['saz_a.wav', 'saz_b.wav', 'saz_c.wav']);
  });

  it('are told and kept where zones take turns, as one may come more often', () => {
    const text = `The samples of a key take turns.\n\n${table(
      head,
      'saz_a.wav | 30 | 35 | 33 | 1 | 127',
      'saz_a.wav | 30 | 35 | 33 | 1 | 127',
      'saz_b.wav | 30 | 35 | 33 | 1 | 127',
      'saz_c.wav | 36 | 39 | 37 | 1 | 127',
    )}`;
    expect(samples(text)).toHaveLength(4);
    expect(notesOf(text).join('\n')).toMatch(/both are kept/);
  });

  it('stay where another cell, their section or their order tells them apart', () => {
    const remarks = table(
      'File | Low | High | Root | Remark',
      'saz_a.wav | 30 | 35 | 33 | near',
      'saz_a.wav | 30 | 35 | 33 | far',
      'saz_b.wav | 36 | 39 | 37 | near',
    );
    expect(samples(remarks)).toHaveLength(3);
    const turns = table(
      'File | Root | Round robin',
      'saz_a.wav | 40 | 1',
      'saz_b.wav | 40 | 2',
      'saz_a.wav | 40 | 3',
    );
    expect(samples(turns)).toHaveLength(3);
    const sections = table(
      'File | Low | High | Root',
      'Open',
      'saz_a.wav | 30 | 35 | 33',
      'saz_b.wav | 36 | 39 | 37',
      'Muted',
      'saz_a.wav | 30 | 35 | 33',
      'saz_c.wav | 36 | 39 | 37',
    );
    expect(samples(sections)).toHaveLength(4);
  });
});
