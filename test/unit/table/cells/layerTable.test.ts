import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const velocities = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel ?? ''}-${hivel ?? ''}`);

const zones = table(
  'File | Layer | Low | High | Root',
  'lute_40x.wav | X | 38 | 44 | 40',
  'lute_47x.wav | X | 45 | 51 | 47',
  'lute_40y.wav | Y | 38 | 44 | 40',
  'lute_47y.wav | Y | 45 | 51 | 47',
);
const layers = table('Layer | Vel from | Vel to', 'X | 1 | 58', 'Y | 59 | 127');
const expected = ['1-58', '1-58', '59-127', '59-127'];

describe('a table that lists the velocities of layers', () => {
  it('gives them to the zones of each, above or below', () => {
    for (const text of [
      `${layers}\n\n${zones}`,
      `${zones}\n\n${layers}`,
      `Layers\n${layers}\n\nZones\n${zones}`,
    ]) {
      expect(velocities(text)).toEqual(expected);
      expect(notesOf(text).join('\n')).toMatch(/A table of layers gives values to all zones of each/);
      expect(notesOf(text).join('\n')).not.toMatch(/it is not used/);
    }
  });

  it('is heard with other words and with ranges in one cell', () => {
    const german = zones.replace(
      'File | Layer | Low | High | Root',
      'Datei | Lage | Unten | Oben | Grundton',
    );
    for (const heading of ['Lage | Anschlag', 'Schicht | Velocity']) {
      const list = table(heading, 'X | 1-58', 'Y | 59-127');
      for (const text of [`${german}\n\n${list}`, `${list}\n\n${german}`])
        expect(velocities(text)).toEqual(expected);
    }
  });

  it('finds the layer in the names of files where no column names it', () => {
    const named = table(
      'File | Low | High',
      'lute_x_40.wav | 38 | 44',
      'lute_x_47.wav | 45 | 51',
      'lute_y_40.wav | 38 | 44',
      'lute_y_47.wav | 45 | 51',
    );
    expect(velocities(`${layers}\n\n${named}`)).toEqual(expected);
  });

  it('may give key switches to ways of playing', () => {
    const text = `${table('Layer | Keyswitch', 'X | 12', 'Y | 13')}\n\n${zones}`;
    expect(regions(text).map((region) => region.sw_last)).toEqual(['12', '12', '13', '13']);
  });

  it('is left where zones give velocities by themselves or are of another layer', () => {
    const own = table(
      'File | Layer | Low | High | Vel from | Vel to',
      'lute_40x.wav | X | 38 | 44 | 1 | 70',
      'lute_40y.wav | Y | 38 | 44 | 71 | 127',
    );
    expect(velocities(`${layers}\n\n${own}`)).toEqual(['1-70', '71-127']);
    const other = `${layers}\n\n${zones}\n${table('lute_54z.wav | Z | 52 | 58 | 54')}`;
    expect(velocities(other).at(-1)).toBe('-');
    expect(notesOf(other).join('\n')).toMatch(/it is not used/);
  });
});
