import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const column = (heading: string, cells: readonly string[]) =>
  table(`File | Key | ${heading}`, ...cells.map((cell, at) => `bowl ${at}.wav | ${40 + at} | ${cell}`));
const volumes = (text: string) => regions(text).map(({ volume = '0' }) => Number(volume));

describe('a column of levels with a sign for percent in some cells', () => {
  it.each([
    ['Lautst.', ['80 %', '50', '100 %']],
    ['Volume', ['80%', '50', '100', '100']],
  ])('is percent throughout, under %s', (heading, cells) => {
    expect(volumes(column(heading, cells)).slice(0, 3)).toEqual([-1.94, -6.02, 0]);
  });

  it('says so where most cells lack it', () => {
    const text = column('Level', ['80 %', '50', '25', '40', '60']);
    expect(volumes(text)).toEqual([-1.94, -6.02, -12.04, -7.96, -4.44]);
    expect(notesOf(text).join()).toMatch(/read as percent, as some cells have the sign/);
  });

  it('is not taken over where the others are below 0', () => {
    expect(volumes(column('Level', ['80 %', '-5', '-2', '-4']))).toEqual([-1.94, -5, -2, -4]);
  });
});
