import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const turns = (text: string) =>
  regions(text).map((one) => `${one.seq_position ?? '-'}/${one.seq_length ?? '-'}`);

describe('numbers of takes', () => {
  it('are no turns where no two rows answer the same keys', () => {
    const text = table(
      'File | Take | Low | High | Root',
      'a.wav | 1 | 40 | 44 | 42',
      'b.wav | 2 | 45 | 49 | 47',
      'c.wav | 3 | 50 | 54 | 52',
      'd.wav | 1 | 55 | 59 | 57',
    );
    expect(turns(text)).toEqual(['-/-', '-/-', '-/-', '-/-']);
    expect(notesOf(text).join('\n')).toMatch(/nothing plays in turn/);
  });

  it('are no turns where velocities tell rows of the same keys apart', () => {
    const text = table(
      'File | Take | Keys | Root | Low vel | High vel',
      'a.wav | 1 | 40-44 | 42 | 1 | 60',
      'b.wav | 2 | 40-44 | 42 | 61 | 127',
      'c.wav | 1 | 45-49 | 47 | 1 | 60',
      'd.wav | 3 | 45-49 | 47 | 61 | 127',
    );
    expect(turns(text)).toEqual(['-/-', '-/-', '-/-', '-/-']);
  });

  it('are turns where rows share keys', () => {
    const same = table(
      'File | Take | Keys | Root',
      'a.wav | 1 | 40-44 | 42',
      'b.wav | 2 | 40-44 | 42',
      'c.wav | 1 | 45-49 | 47',
      'd.wav | 2 | 45-49 | 47',
    );
    expect(turns(same)).toEqual(['1/2', '2/2', '1/2', '2/2']);
  });
});
