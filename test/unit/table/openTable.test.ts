import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openZoneTable, readZoneTable } from '../../../server/table/readTable';

describe('an open table', () => {
  it('tells the samples that its zones name, each once, in order', () => {
    const table = openZoneTable('Sample\tKey\nb.wav\t60\na.wav\t61\nTotal\t2\nb.wav\t62\n=A1\t63');
    expect([...table.sampleNames()]).toEqual(['b.wav', 'a.wav']);
  });

  it('tells none where it gives no zones', () => {
    for (const text of ['', '60', 'Sample\tKey', 'Root\tKey\n1\t2']) {
      expect(openZoneTable(text).sampleNames().size).toBe(0);
    }
  });

  it('is read again with other options', () => {
    const table = openZoneTable('Sample,Key\na.wav,C3\nb.wav,D3', { path: 'zones.csv' });
    const keys = (middleC: 'C3' | 'C4') => {
      const { instrument } = table.read({ middleC });
      return [...instrument.regions].map((region) => instrument.lowKey[region]);
    };
    // Common practice: what one convention calls C3 is C4 in another, an octave of twelve keys apart.
    expect([keys('C4'), keys('C3')]).toEqual([
      [48, 50],
      [60, 62],
    ]);
    expect(table.read().instrument.sources[0]?.path).toBe('zones.csv');
  });

  const folder = fileURLToPath(new URL('../../corpus/tables/', import.meta.url));
  it.each(readdirSync(folder).filter((name) => !name.endsWith('.json')))(
    'names the samples that reading looks up in %s',
    (name) => {
      const text = readFileSync(folder + name, 'utf8');
      const asked = new Set<string>();
      readZoneTable(text, {
        resolveSample(sample) {
          asked.add(sample);
          return undefined;
        },
      });
      expect(openZoneTable(text).sampleNames()).toEqual(asked);
    },
  );
});
