import { describe, expect, it } from 'vitest';
import { regions, table } from './tableRegions';

const velocities = (text: string) =>
  regions(text).map(({ lovel = '1', hivel = '127' }) => `${lovel}-${hivel}`);

describe('words for soft and loud', () => {
  it.each([
    ['Playing', 'softly', 'hard'],
    ['Stroke', 'gentle', 'firm'],
    ['Remark', 'piano', 'forte'],
  ])('are dynamics under %s', (heading, soft, loud) => {
    const text = table(`File | Key | ${heading}`, `zither1.wav | 64 | ${soft}`, `zither2.wav | 64 | ${loud}`);
    expect(velocities(text)).toEqual(['1-63', '64-127']);
  });
});

describe('a level for all samples', () => {
  it.each([
    'Todas las muestras van 3 dB más bajas, por favor: volumen -3 dB en todas.',
    'All samples are 3 dB lower: volume -3 dB.',
  ])('may be given twice: %s', (said) => {
    expect(
      regions(`${said}\n\n${table('File | Key', 'a.wav | 64', 'b.wav | 65')}`).map(({ volume }) => volume),
    ).toEqual(['-3', '-3']);
  });
});

describe('a remark behind a field of several on a line', () => {
  it('says how that field counts', () => {
    const text = [
      'struct part { const char *file; int lo, hi, root; float amp; /* linear factor */ };',
      'static const struct part parts[] = {',
      '  { "kora1.wav", 40, 45, 42, 1.0f },',
      '  { "kora2.wav", 46, 51, 48, 0.5f },',
      '  { "kora3.wav", 52, 57, 54, 1.25f },',
      '};',
    ].join('\n');
    expect(regions(text).map(({ volume }) => Number(volume ?? 0))).toEqual([0, -6.02, 1.94]);
  });
});
