import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const bars = [40, 46, 52]
  .map(
    (key, at) =>
      `<bar><clip>bar${at}.wav</clip><keys><low>${key}</low><high>${key + 5}</high></keys><gain unit="dB">-${at + 2}</gain></bar>`,
  )
  .join('');

describe('files of effects beside numbers with their units', () => {
  it.each(['reverb', 'nachhall', 'riverbero', 'convolver', 'echo'])(
    'are no samples that regions refer to by the unit: <%s>',
    (name) => {
      const text = `<vibes><rack><${name}><clip>church.wav</clip><gain unit="dB">-11</gain></${name}></rack><bars>${bars}</bars></vibes>`;
      expect(valuesIn(text, 'sample', 'lokey', 'volume')).toEqual([
        'bar0.wav 40 -2',
        'bar1.wav 46 -3',
        'bar2.wav 52 -4',
      ]);
    },
  );
});
