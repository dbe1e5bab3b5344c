import { describe, expect, it } from 'vitest';
import { tableCells } from '../../../../server/table/cells/tableCells';
import { findTables } from '../../../../server/table/cells/tableRows';
import { readColumns } from '../../../../server/table/columns/columnMeaning';
import type { ColumnMeaning } from '../../../../server/trade/meaning';
import { notesOf, regions, table } from '../tableRegions';

function columnsOf(text: string, chosen?: Record<number, ColumnMeaning>) {
  const cells = tableCells(text);
  if (!cells) throw new Error('no table');
  const given = chosen && new Map(Object.entries(chosen).map(([index, meaning]) => [Number(index), meaning]));
  return readColumns(cells, findTables(cells)[0], given);
}

/** What the columns hold, and what is said of those that the test is about. */
const meanings = (text: string, chosen?: Record<number, ColumnMeaning>) =>
  columnsOf(text, chosen).map(({ meaning }) => meaning);
const evidence = (text: string, index: number) => columnsOf(text)[index].evidence.join(' ');

/** `Start` and `End` are those of the sample unless they stand right after the loop (common practice of such tables). */
describe('points right behind a loop', () => {
  const rows = ['a.wav | 60 | on | 1200 | 44099', 'b.wav | 61 | on | 800 | 52000'];

  it('are those of the loop', () => {
    const text = table('File | Key | Loop | Start | End', ...rows);
    expect(meanings(text)).toEqual(['sample', 'key', 'loop', 'loop_start', 'loop_end']);
    expect(evidence(text, 3)).toMatch(/right after the loop/);
    expect(evidence(text, 4)).toMatch(/right after the loop/);
  });

  it('are those of the sample where something stands between', () => {
    const between = (...headings: string[]) =>
      meanings(
        table(
          `File | Key | ${headings.join(' | ')}`,
          'a.wav | 60 | on | 1200 | x | 44099',
          'b.wav | 61 | on | 800 | y | 52000',
        ),
      );
    expect(between('Loop', 'Start', 'X', 'End').slice(3)).toEqual(['offset', expect.anything(), 'end']);
    const behind = table(
      'File | Key | Loop | X | Start | End',
      'a.wav | 60 | on | x | 1200 | 44099',
      'b.wav | 61 | on | y | 800 | 52000',
    );
    expect(meanings(behind).slice(4)).toEqual(['offset', 'end']);
    const before = table(
      'File | Key | Start | End | Loop',
      'a.wav | 60 | 1200 | 44099 | on',
      'b.wav | 61 | 800 | 52000 | on',
    );
    expect(meanings(before).slice(2)).toEqual(['offset', 'end', 'loop']);
    const turned = table(
      'File | Key | Loop | End | Start',
      'a.wav | 60 | on | 44099 | 1200',
      'b.wav | 61 | on | 52000 | 800',
    );
    expect(meanings(turned).slice(2)).toEqual(['loop', 'end', 'offset']);
  });

  it('are those of the sample where the headings say more, or others give the loop', () => {
    const told = table('File | Key | Loop | Sample start | Sample end', ...rows);
    expect(meanings(told).slice(2)).toEqual(['loop', 'offset', 'end']);
    const others = table(
      'File | Key | Loop | Start | End | Loop start | Loop end',
      'a.wav | 60 | on | 1200 | 44099 | 1300 | 1400',
      'b.wav | 61 | on | 800 | 52000 | 1300 | 1400',
    );
    expect(meanings(others).slice(2)).toEqual(['loop', 'offset', 'end', 'loop_start', 'loop_end']);
    const start = table(
      'File | Key | Loop | Start | End | Loop start',
      'a.wav | 60 | on | 1 | 44099 | 1300',
      'b.wav | 61 | on | 2 | 52000 | 1300',
    );
    expect(meanings(start).slice(3)).toEqual(['offset', 'end', 'loop_start']);
  });

  it('are what a person has set', () => {
    const text = table('File | Key | Loop | Start | End', ...rows);
    expect(meanings(text, { 3: 'offset' }).slice(3)).toEqual(['offset', 'end']);
    expect(meanings(text, { 4: 'end' }).slice(3)).toEqual(['offset', 'end']);
  });
});

describe('a key', () => {
  it('alone is the one that it sounds on', () => {
    expect(meanings(table('File | Key', 'a.wav | 60', 'b.wav | 61'))).toEqual(['sample', 'key']);
  });

  it('beside the ends of a range, or the range, is the root key', () => {
    const ends = table('File | Key | Low key | High key', 'a.wav | 60 | 58 | 62', 'b.wav | 65 | 63 | 66');
    expect(meanings(ends)).toEqual(['sample', 'pitch_keycenter', 'lokey', 'hikey']);
    expect(evidence(ends, 1)).toMatch(/this is the root key/);
    const low = table('File | Key | Low key', 'a.wav | 60 | 58', 'b.wav | 65 | 63');
    expect(meanings(low)[1]).toBe('pitch_keycenter');
    const high = table('File | Key | High key', 'a.wav | 60 | 62', 'b.wav | 65 | 66');
    expect(meanings(high)[1]).toBe('pitch_keycenter');
    const range = table('File | Key | Key range', 'a.wav | 60 | 58-62', 'b.wav | 65 | 63-66');
    expect(meanings(range)).toEqual(['sample', 'pitch_keycenter', 'key_range']);
    expect(meanings(ends, { 1: 'key' })[1]).toBe('key');
  });

  it('beside the root key is the range', () => {
    const text = table('File | Root | Key', 'a.wav | 60 | 58-62', 'b.wav | 65 | 63-66');
    expect(meanings(text)).toEqual(['sample', 'pitch_keycenter', 'key_range']);
  });
});

describe('from and to', () => {
  it('are keys where they hold some', () => {
    const text = table('File | From | To', 'a.wav | 58 | 62', 'b.wav | 63 | 66');
    expect(meanings(text)).toEqual(['sample', 'lokey', 'hikey']);
  });

  it('are places in the sample where they hold greater numbers, or another column gives the keys', () => {
    const places = table('File | Start | End', 'a.wav | 100 | 44100', 'b.wav | 0 | 52000');
    expect(meanings(places)).toEqual(['sample', 'offset', 'end']);
    const keyed = table('File | Key | Start | End', 'a.wav | 60 | 5 | 100', 'b.wav | 61 | 5 | 100');
    expect(meanings(keyed).slice(2)).toEqual(['offset', 'end']);
    const zeros = table('File | Start | End', 'a.wav | 0 | 0', 'b.wav | 0 | 0');
    expect(meanings(zeros).slice(1)).toEqual(['offset', 'end']);
    const falling = table('File | Start | End', 'a.wav | 62 | 58', 'b.wav | 66 | 63');
    expect(meanings(falling).slice(1)).not.toEqual(['lokey', 'hikey']);
  });

  it('are what a person has set', () => {
    const text = table('File | Start | End', 'a.wav | 58 | 62', 'b.wav | 63 | 66');
    expect(meanings(text)).toEqual(['sample', 'lokey', 'hikey']);
    expect(meanings(text, { 1: 'offset' }).slice(1)).toEqual(['offset', 'end']);
    expect(meanings(text, { 2: 'end' }).slice(1)).toEqual(['offset', 'end']);
  });
});

describe('ranges', () => {
  it('are known by their cells where the heading says one end', () => {
    const keys = table('File | Key', 'a.wav | 58-62', 'b.wav | 63-66');
    expect(meanings(keys)).toEqual(['sample', 'key_range']);
    expect(evidence(keys, 1)).toMatch(/cells hold ranges/);
    expect(meanings(table('File | Low key', 'a.wav | 58-62', 'b.wav | 63-66'))[1]).toBe('key_range');
    expect(meanings(table('File | High key', 'a.wav | C3-E3', 'b.wav | F3-A3'))[1]).toBe('key_range');
    expect(meanings(table('File | Key | Low vel', 'a.wav | 60 | 1-63', 'b.wav | 60 | 64-127'))[2]).toBe(
      'velocity_range',
    );
    expect(meanings(table('File | Key | High vel', 'a.wav | 60 | 1-63', 'b.wav | 60 | 64-127'))[2]).toBe(
      'velocity_range',
    );
    expect(meanings(keys, { 1: 'key' })[1]).toBe('key');
  });

  it('that hold one number are the end that no other column gives', () => {
    const high = table('File | Low key | Key range', 'a.wav | 58 | 62', 'b.wav | 63 | 66');
    expect(meanings(high)).toEqual(['sample', 'lokey', 'hikey']);
    expect(evidence(high, 2)).toMatch(/other end of the range/);
    const low = table('File | Key range | High key', 'a.wav | 58 | 62', 'b.wav | 63 | 66');
    expect(meanings(low)).toEqual(['sample', 'lokey', 'hikey']);
    expect(meanings(high, { 2: 'key_range' })[2]).toBe('key_range');
  });

  it('below the low keys are how many keys there are', () => {
    const text = table('File | Low key | Key range', 'a.wav | 58 | 5', 'b.wav | 63 | 4');
    expect(meanings(text)).toEqual(['sample', 'lokey', 'key_count']);
    expect(evidence(text, 2)).toMatch(/count keys/);
  });

  it('of velocities that are single numbers are the highest of each layer', () => {
    const text = table('File | Key | Velocity', 'a.wav | 60 | 63', 'b.wav | 60 | 127');
    expect(meanings(text)).toEqual(['sample', 'key', 'hivel']);
    expect(evidence(text, 2)).toMatch(/highest of each layer/);
  });
});

describe('low and high twice', () => {
  it('are the velocities the second time', () => {
    const text = table(
      'File | Low | High | Low | High',
      'a.wav | 58 | 62 | 1 | 63',
      'b.wav | 58 | 62 | 64 | 127',
      'c.wav | 63 | 66 | 1 | 127',
    );
    expect(meanings(text)).toEqual(['sample', 'lokey', 'hikey', 'lovel', 'hivel']);
    expect(evidence(text, 3)).toMatch(/stand twice/);
  });
});

describe('velocities that count from 1', () => {
  const layers = (heading: string, ...numbers: number[]) =>
    table(
      `File | Key | ${heading}`,
      ...numbers.map((number, at) => `s${at}.wav | ${60 + Math.floor(at / 2)} | ${number}`),
    );

  it('number the layers', () => {
    expect(meanings(layers('Velocity', 1, 2, 1, 2))[2]).toBe('dynamics');
    expect(evidence(layers('Velocity', 1, 2, 1, 2), 2)).toMatch(/number the layers/);
  });

  it('are velocities where they do not', () => {
    expect(meanings(layers('Velocity', 2, 3, 2, 3))[2]).not.toBe('dynamics');
    expect(meanings(layers('Velocity', 1, 3, 1, 3))[2]).not.toBe('dynamics');
    expect(meanings(layers('Velocity', 1, 1, 1, 1))[2]).not.toBe('dynamics');
    expect(meanings(layers('Velocity', 63, 127, 63, 127))[2]).not.toBe('dynamics');
    expect(meanings(layers('Velocity', 1, 2, 1, 2), { 2: 'hivel' })[2]).toBe('hivel');
    const both = table(
      'File | Key | Low vel | High vel',
      'a.wav | 60 | 1 | 2',
      'b.wav | 60 | 2 | 3',
      'c.wav | 61 | 1 | 2',
      'd.wav | 61 | 2 | 3',
    );
    expect(meanings(both).slice(2)).toEqual(['lovel', 'hivel']);
  });
});

describe('groups', () => {
  it('in numbers are those that silence one another beside a column of who silences whom', () => {
    const text = table('File | Key | Group | Off by', 'a.wav | 60 | 1 | 2', 'b.wav | 61 | 2 | 1');
    expect(meanings(text)).toEqual(['sample', 'key', 'mute_group', 'off_by']);
    expect(evidence(text, 2)).toMatch(/another column silences/);
    expect(meanings(text, { 2: 'group' })[2]).toBe('group');
  });

  it('in words are groups', () => {
    const named = table('File | Key | Group | Off by', 'a.wav | 60 | soft | 2', 'b.wav | 61 | loud | 1');
    expect(meanings(named)[2]).toBe('group');
    expect(meanings(table('File | Key | Group', 'a.wav | 60 | 1', 'b.wav | 61 | 2'))[2]).toBe('group');
  });
});

describe('soft and loud', () => {
  it('are the ends of velocities where their numbers are', () => {
    const text = table(
      'File | Key | Soft limit | Loud limit',
      'a.wav | 60 | 1 | 63',
      'b.wav | 60 | 64 | 127',
    );
    expect(meanings(text).slice(2)).toEqual(['lovel', 'hivel']);
    expect(evidence(text, 2)).toMatch(/soft and loud/);
    const turned = table(
      'File | Key | Loud limit | Soft limit',
      'a.wav | 60 | 63 | 1',
      'b.wav | 60 | 127 | 64',
    );
    expect(meanings(turned).slice(2)).toEqual(['hivel', 'lovel']);
  });

  it('are none beside velocities, or out of order', () => {
    const beside = table(
      'File | Key | Soft limit | Loud limit | Velocity',
      'a.wav | 60 | 1 | 63 | 1-63',
      'b.wav | 60 | 64 | 127 | 64-127',
    );
    expect(meanings(beside).slice(2, 4)).not.toEqual(['lovel', 'hivel']);
    const falling = table(
      'File | Key | Soft limit | Loud limit',
      'a.wav | 60 | 63 | 1',
      'b.wav | 60 | 127 | 64',
    );
    expect(meanings(falling).slice(2)).not.toEqual(['lovel', 'hivel']);
  });
});

describe('low and high that are turned round', () => {
  it('are taken the other way', () => {
    const keys = table('File | Low key | High key', 'a.wav | 62 | 58', 'b.wav | 66 | 63', 'c.wav | 70 | 67');
    expect(meanings(keys)).toEqual(['sample', 'hikey', 'lokey']);
    expect(evidence(keys, 1)).toMatch(/"low key" lie above those under "high key"/);
    const velocities = table(
      'File | Key | Low vel | High vel',
      'a.wav | 60 | 63 | 1',
      'b.wav | 60 | 127 | 64',
    );
    expect(meanings(velocities).slice(2)).toEqual(['hivel', 'lovel']);
  });

  it('stay where a slip explains it, or a person set them', () => {
    const slip = table('File | Low key | High key', 'a.wav | 58 | 62', 'b.wav | 66 | 63', 'c.wav | 67 | 70');
    expect(meanings(slip)).toEqual(['sample', 'lokey', 'hikey']);
    const text = table('File | Low key | High key', 'a.wav | 62 | 58', 'b.wav | 66 | 63');
    expect(meanings(text, { 1: 'lokey' }).slice(1)).toEqual(['lokey', 'hikey']);
    expect(meanings(text, { 2: 'hikey' }).slice(1)).toEqual(['lokey', 'hikey']);
  });
});

describe('key numbers beside ranges and root keys', () => {
  const text = table(
    'Sample | Lowest | Highest | Root | MIDI number',
    'barn-a.wav | 36 | 40 | D2 | 38',
    'barn-b.wav | 41 | 45 | G2 | 43',
    'barn-c.wav | 46 | 50 | C3 | 48',
  );

  it('do not take the place of the ranges', () => {
    expect(regions(text).map(({ lokey, hikey, key }) => [key, lokey, hikey])).toEqual([
      [undefined, '36', '40'],
      [undefined, '41', '45'],
      [undefined, '46', '50'],
    ]);
  });

  it('are told as not used', () => {
    expect(notesOf(text).filter((note) => note.includes('MIDI number'))).toHaveLength(1);
  });
});
