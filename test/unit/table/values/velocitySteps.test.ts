import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const layers = (...ends: [number, number][]) =>
  table(
    'File | Key | Vel lo | Vel hi',
    ...ends.map(([low, high], at) => `fen${at}.wav | 50 | ${low} | ${high}`),
  );
const read = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel}-${hivel}`);

describe('velocities in steps of their own', () => {
  it('are scaled where layers share them out, which is told', () => {
    expect(read(layers([1, 4], [5, 8]))).toEqual(['1-64', '65-127']);
    expect(read(layers([1, 35], [36, 70]))).toEqual(['1-64', '65-127']);
    expect(notesOf(layers([1, 4], [5, 8]))).toContainEqual(
      expect.stringContaining('are taken to count from 0 to 8'),
    );
  });

  it('stand where a heading gives the scale, or one layer alone ends below', () => {
    const given = layers([1, 35], [36, 70]).replace('Vel hi', 'Vel hi (0..127)');
    expect(read(given)).toEqual(['1-35', '36-70']);
    expect(read(layers([1, 90]))).toEqual(['1-90']);
  });

  it('stand where layers end below unevenly, which is told', () => {
    const text = layers([1, 20], [21, 70]);
    expect(read(text)).toEqual(['1-20', '21-70']);
    expect(notesOf(text)).toContainEqual(expect.stringContaining('71 to 127 stay silent'));
  });

  it('are scaled where the heading gives the scale that the note advises to give', () => {
    const text = layers([1, 20], [21, 70])
      .replace('Vel lo', 'Vel lo (0..70)')
      .replace('Vel hi', 'Vel hi (0..70)');
    expect(read(text)).toEqual(['1-36', '37-127']);
  });
});
