import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const keys = (text: string) =>
  regions(text).map(({ sample, lokey, hikey }) => `${sample} ${lokey ?? '-'} ${hikey ?? '-'}`);

describe('tables that give root keys and nothing else of keys', () => {
  it('share the keys out among their roots, and tell it', () => {
    const text = table('File | Root', 'vina_a.wav | 45', 'vina_b.wav | 50', 'vina_c.wav | 53');
    expect(keys(text)).toEqual(['vina_a.wav 0 47', 'vina_b.wav 48 51', 'vina_c.wav 52 127']);
    expect(notesOf(text).join('\n')).toMatch(/only root keys.*from 0 to 127, each key to the nearest root/);
    expect(notesOf(text).join('\n')).not.toMatch(/whole keyboard/);
  });

  it('do so in each column of dynamics', () => {
    const text = table(
      'Root | mp | f',
      '40 | vina_40_mp.wav | vina_40_f.wav',
      '43 | vina_43_mp.wav | vina_43_f.wav',
      '46 | vina_46_mp.wav |',
      '49 | vina_49_mp.wav | vina_49_f.wav',
    );
    expect(keys(text)).toEqual([
      'vina_40_mp.wav 0 41',
      'vina_40_f.wav 0 41',
      'vina_43_mp.wav 42 44',
      'vina_43_f.wav 42 46',
      'vina_46_mp.wav 45 47',
      'vina_49_mp.wav 48 127',
      'vina_49_f.wav 47 127',
    ]);
  });

  it('do so for releases by themselves', () => {
    const text = table(
      'File | Root | Trigger',
      'vina_a.wav | 45 | press',
      'vina_b.wav | 50 | press',
      'vina_c.wav | 53 | press',
      'vina_up.wav | 48 | release',
    );
    expect(keys(text)).toEqual([
      'vina_a.wav 0 47',
      'vina_b.wav 48 51',
      'vina_c.wav 52 127',
      'vina_up.wav - -',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/1 zone plays on the whole keyboard, as too few others/);
  });

  it('leave zones of one root on the whole keyboard, and tell it', () => {
    const text = table('File | Root | Round robin', 'vina_a.wav | 45 | 1', 'vina_b.wav | 45 | 2');
    expect(keys(text)).toEqual(['vina_a.wav - -', 'vina_b.wav - -']);
    expect(notesOf(text).join('\n')).toMatch(/every region plays on the whole keyboard/);
  });
});
