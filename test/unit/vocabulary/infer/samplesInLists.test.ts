import { describe, expect, it } from 'vitest';
import { lackOfInstrument } from '../../../../server/vocabulary/infer/lackOfInstrument';
import { valuesIn } from './inferred';

const zones = (files: readonly string[]) =>
  `<set>${files
    .map((file, at) => `<zone low="${40 + at * 2}" high="${41 + at * 2}" file="${file}"/>`)
    .join('')}</set>`;

describe('several files in one place', () => {
  it.each(['a.wav, b.wav', 'a.wav;b.wav', 'x/a b.flac | x/c d.flac', 'a.wav b.wav'])(
    'are never taken for one file: %s',
    (list) => {
      const text = zones([list, 'c.wav', 'd.wav']);
      expect(valuesIn(text, 'sample')).toEqual(['-']);
      expect(lackOfInstrument(text)).toContain('names several files in one place');
    },
  );

  it('are not seen in a name with a comma or a second ending', () => {
    expect(valuesIn(zones(['low, soft.wav', 'mid.wav.flac', 'a.wav']), 'lokey')).toEqual(['40', '42', '44']);
  });
});
