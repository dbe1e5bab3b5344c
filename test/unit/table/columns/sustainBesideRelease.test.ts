import { expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

it.each(['Kind', 'Part', 'What', 'Type'])(
  'reads sustain beside release as what starts zones, under "%s"',
  (heading) => {
    const text = table(
      `${heading} | Sample | Low | High`,
      'Sustain | a.wav | 50 | 54',
      'Release | b.wav | 50 | 54',
      'Note off | c.wav | 55 | 58',
    );
    expect(regions(text).map(({ trigger }) => trigger ?? 'attack')).toEqual(['attack', 'release', 'release']);
  },
);

it('lets samples of a folder sound when the key is let go', () => {
  for (const said of [
    'All samples in the folder Up are release samples.',
    'Alle Dateien im Ordner Up sind Release-Samples.',
  ]) {
    const text = `${said}\n${table('Sample | Key', 'Up/a.wav | 50', 'On/a.wav | 50')}`;
    expect(regions(text).map(({ trigger }) => trigger ?? 'attack')).toEqual(['release', 'attack']);
  }
});
