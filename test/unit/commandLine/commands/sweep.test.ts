import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { folderWith, run } from '../runInFolder';

describe('zonewright sweep', () => {
  it('writes a MIDI file that plays every region, and says what it plays', async () => {
    const folder = folderWith({
      'bells.sfz':
        '<global> sample=*sine\n<region> key=60\n<region> key=61\n<region> key=62 end=-1\n<region> sample=gone.wav',
    });
    const answer = await run(folder, [
      'sweep',
      'bells.sfz',
      '--output',
      'bells.mid',
      '--hold',
      '0.5',
      '--gap',
      '2',
    ]);
    expect(answer).toEqual({
      status: 0,
      error: '',
      out: `2 strikes in 6 s: 2 of 4 regions sound.

Silent
  sample: 1 region
    Its sample file is missing.
      line 5: gone.wav
  off: 1 region
    Its end is below 0, which turns its sound off; it can still silence others.
      line 4: *sine
`,
    });
    const { tracks } = parseMidi(readFileSync(join(folder, 'bells.mid')));
    const keys = tracks.flat().flatMap((event) => (event.type === 'noteOn' ? [event.noteNumber] : []));
    expect(keys).toEqual([60, 61]);
  });

  it('writes the same bytes each time, over a MIDI file of before and nothing else', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=*sine lorand=0.9', 'notes.txt': 'do not lose' });
    const make = (...more: string[]) => run(folder, ['sweep', 'a.sfz', ...more]);
    expect((await make('--output', 'a.mid')).status).toBe(0);
    const first = readFileSync(join(folder, 'a.mid'));
    expect((await make('--output', 'a.mid')).status).toBe(0);
    expect(readFileSync(join(folder, 'a.mid')).equals(first)).toBe(true);
    for (const name of ['notes.txt', 'a.sfz']) {
      const answer = await make('--output', name);
      expect(answer.status).toBe(2);
      expect(answer.error).toMatch(/--force/);
    }
    expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('do not lose');
    writeFileSync(join(folder, 'old.txt'), 'may go');
    expect((await make('--output', 'old.txt', '--force')).status).toBe(0);
  });

  it.each([
    [[], /sweep takes one file/],
    [['a.sfz'], /sweep needs --output/],
    [['a.sfz', '--output', 'a.mid', '--hold', 'long'], /--hold takes seconds from 0 to 600/],
    [['a.sfz', '--output', 'a.mid', '--gap', '601'], /--gap takes seconds/],
    [['a.sfz', '--output', 'no/such/a.mid'], /its folder does not exist/],
    [['silent.sfz', '--output', 'a.mid'], /no region of it can sound/],
    [['gone.sfz', '--output', 'a.mid'], /there is no such file/],
  ])('refuses %j in one line', async (args, message) => {
    const folder = folderWith({ 'a.sfz': '<region> sample=*sine', 'silent.sfz': '<region> sample=gone.wav' });
    const answer = await run(folder, ['sweep', ...args]);
    expect(answer.status).toBe(2);
    expect(answer.error).toMatch(message);
    expect(answer.error.trim().split('\n')).toHaveLength(1);
  });
});
