import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, layerWords } from './invented';

/**
 * Inherited at two levels and from the instrument, some of it from elements that stand behind the regions; short names, counts
 * from 1, times in the envelope in seconds, numbers for switches.
 */
const vocabulary: Vocabulary = {
  name: 'Brewery',
  levels: [
    {
      element: 'brewery',
      is: 'instrument',
      parameters: [
        { parameter: 'ampeg_release', at: 'env/@rel', form: { kind: 'time', unit: 'seconds' } },
        { parameter: 'amp_veltrack', at: '@velTrk', form: { kind: 'number', times: 0.01 } },
      ],
    },
    {
      element: 'cellar',
      is: 'group',
      parameters: [
        { parameter: 'volume', at: '@vol', form: { kind: 'level', unit: 'dB' } },
        { parameter: 'polyphony', at: 'voices/@max', form: { kind: 'number' } },
      ],
    },
    {
      element: 'vat',
      is: 'group',
      parameters: [
        { parameter: 'lovel', at: '@v1', form: { kind: 'velocity', most: 127 } },
        { parameter: 'hivel', at: '@v2', form: { kind: 'velocity', most: 127 } },
        { parameter: 'seq_length', at: '@rrLen', form: { kind: 'number' } },
        { parameter: 'ampeg_attack', at: 'env/@att', form: { kind: 'time', unit: 'seconds' } },
      ],
    },
    {
      element: 'pint',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@wav', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@kLo', form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: '@kHi', form: { kind: 'key', written: 'number' } },
        { parameter: 'pitch_keycenter', at: '@kRt', form: { kind: 'key', written: 'number' } },
        { parameter: 'seq_position', at: '@rrPos', form: { kind: 'number' } },
        { parameter: 'volume', at: '@vol', form: { kind: 'level', unit: 'dB' } },
        { parameter: 'tune', at: '@tun', form: { kind: 'tuning', unit: 'cents' } },
        { parameter: 'offset', at: '@st', form: { kind: 'position', unit: 'frames', first: 1 } },
        { parameter: 'end', at: '@en', form: { kind: 'position', unit: 'frames', first: 1 } },
        {
          parameter: 'direction',
          at: '@rev',
          form: { kind: 'words', words: { '0': 'forward', '1': 'reverse' } },
        },
      ],
    },
  ],
};

export function brewery(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<brewery velTrk="0.85">'];
  const all = invented();
  for (const cellar of [0, 1]) {
    const cellarVolume = cellar === 0 ? -3 : 1.5;
    lines.push(`  <cellar vol="${cellarVolume}">`);
    for (const layer of [cellar * 2, cellar * 2 + 1]) {
      const members = all.filter((one) => one.layer === layer);
      const attack = 0.01 * (layer + 1);
      const bounds = { v1: layer * 32, v2: layer * 32 + 31 };
      lines.push(`    <vat${attributes({ ...bounds, rrLen: 2 })}>`);
      for (const one of members) {
        const sample = `ale/${layerWords[layer]}/${one.rootName.toLowerCase()}-${one.take}.wav`;
        const own = one.zone % 3 === 0 ? one.vary(13) / 2 - 6 : undefined;
        const tune = one.vary(51) - 25;
        const start = one.vary(700);
        const end = one.zone % 4 === 0 ? one.frames - 1 : one.frames - 1 - one.vary(5000);
        const reversed = one.zone % 7 === 2;
        samples.set(sample, facts(one.frames, 44100));
        regions.push({
          ampeg_release: 0.7,
          amp_veltrack: 85,
          polyphony: 8 + cellar,
          lovel: bounds.v1,
          hivel: bounds.v2,
          seq_length: 2,
          ampeg_attack: attack,
          sample,
          lokey: one.low,
          hikey: one.high,
          pitch_keycenter: one.root,
          seq_position: one.take,
          volume: own ?? cellarVolume,
          tune,
          offset: start,
          end,
          direction: reversed ? 'reverse' : 'forward',
        });
        const values = attributes({
          wav: sample,
          kLo: one.low,
          kHi: one.high,
          kRt: one.root,
          rrPos: one.take,
          vol: own,
          tun: tune,
          st: start + 1,
          en: end + 1,
          rev: reversed ? 1 : 0,
        });
        lines.push(`      <pint${values} />`);
      }
      lines.push(`      <env att="${attack.toFixed(2)}"/>`, '    </vat>');
    }
    lines.push(`    <voices max="${8 + cellar}"/>`, '  </cellar>');
  }
  lines.push('  <env rel="0.7"/>', '</brewery>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
