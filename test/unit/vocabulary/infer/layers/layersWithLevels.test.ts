import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const files = ['dulcimer_soft', 'dulcimer_hard', 'dulcimer2_soft', 'dulcimer2_hard']
  .map((name, at) => `<take nr="${at + 1}" path="${name}.wav"/>`)
  .join('');
const zones = (reference: string, first: string, second: string) =>
  [1, 2, 3, 4]
    .map((nr) => {
      const low = nr < 3 ? 50 : 57;
      const layer = nr % 2 === 1 ? first : second;
      return `<zone take="${nr}" ${reference}="${layer}" lowKey="${low}" highKey="${low + 6}" rootKey="${low + 2}"/>`;
    })
    .join('');

describe('regions that refer to a sample and to a layer that gives velocities', () => {
  it.each([
    [
      'layer',
      '<layer id="p" loVel="1" hiVel="70" gain="-4 dB" pan="-30"/><layer id="f" loVel="71" hiVel="127" gain="1.5 dB" pan="20"/>',
    ],
    [
      'couche',
      '<couche id="p" velocite="1-70" niveau="-4 dB" panorama="-30"/><couche id="f" velocite="71-127" niveau="1.5 dB" panorama="20"/>',
    ],
    [
      'group',
      '<group id="p"><velocity from="1" to="70"/><level db="-4"/><pan>-30</pan></group><group id="f"><velocity from="71" to="127"/><level db="1.5"/><pan>20</pan></group>',
    ],
  ])('have its level and its place as well: %s', (reference, layers) => {
    const text = `<set><takes>${files}</takes><all>${layers}</all><zones>${zones(reference, 'p', 'f')}</zones></set>`;
    expect(valuesIn(text, 'lovel', 'hivel', 'volume', 'pan')).toEqual([
      '1 70 -4 -30',
      '71 127 1.5 20',
      '1 70 -4 -30',
      '71 127 1.5 20',
    ]);
  });

  it('have no level from the place that gives the velocities, nor from the number of the layer', () => {
    const layers = '<layer no="1" level="70"/><layer no="2" level="127"/>';
    const text = `<set><takes>${files}</takes><all>${layers}</all><zones>${zones('layer', '1', '2')}</zones></set>`;
    expect(valuesIn(text, 'hivel', 'volume', 'seq_position')).toEqual([
      '70 - -',
      '127 - -',
      '70 - -',
      '127 - -',
    ]);
  });
});
