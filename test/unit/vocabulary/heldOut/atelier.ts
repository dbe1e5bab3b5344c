import { facts, invented, nameOf } from '../examples/invented';
import type { HeldOut } from './heldOut';

/** French, one child element for each value, note names with middle C = C5, times in milliseconds. */
export function atelier(): HeldOut {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const lines = ['<?xml version="1.0"?>', '<atelier>', '  <établi titre="Grand établi">'];
  for (const one of invented()) {
    const path = `sons/verre-${one.root}-${one.layer}-${one.take}.wav`;
    samples.set(path, facts(one.frames, 44100, { rootKey: one.root }));
    lines.push(
      '    <verre>',
      `      <fichier>${path}</fichier>`,
      `      <note-basse>${nameOf(one.low, 5)}</note-basse>`,
      `      <note-haute>${nameOf(one.high, 5)}</note-haute>`,
      `      <note-fondamentale>${nameOf(one.root, 5)}</note-fondamentale>`,
      `      <vélocité-min>${one.lowVelocity}</vélocité-min>`,
      `      <vélocité-max>${one.highVelocity}</vélocité-max>`,
      `      <niveau>${(one.vary(121) / 10 - 9).toFixed(1)} dB</niveau>`,
      `      <panoramique>${one.vary(201) - 100}</panoramique>`,
      `      <désaccord>${one.vary(81) - 40}</désaccord>`,
      `      <attaque>${one.vary(90)} ms</attaque>`,
      `      <remarque>pièce ${one.vary(50)}</remarque>`,
      '    </verre>',
    );
  }
  lines.push('  </établi>', '</atelier>');
  return {
    text: lines.join('\n'),
    samples,
    open: [],
    vocabulary: {
      name: 'atelier',
      levels: [
        { element: 'atelier', is: 'instrument', parameters: [] },
        {
          element: 'établi',
          is: 'group',
          parameters: [{ parameter: 'group_label', at: '@titre', form: { kind: 'text' } }],
        },
        {
          element: 'verre',
          is: 'region',
          parameters: [
            { parameter: 'sample', at: 'fichier', form: { kind: 'path' } },
            { parameter: 'lokey', at: 'note-basse', form: { kind: 'key', written: 'name', middleC: 'C5' } },
            { parameter: 'hikey', at: 'note-haute', form: { kind: 'key', written: 'name', middleC: 'C5' } },
            {
              parameter: 'pitch_keycenter',
              at: 'note-fondamentale',
              form: { kind: 'key', written: 'name', middleC: 'C5' },
            },
            { parameter: 'lovel', at: 'vélocité-min', form: { kind: 'velocity', most: 127 } },
            { parameter: 'hivel', at: 'vélocité-max', form: { kind: 'velocity', most: 127 } },
            { parameter: 'volume', at: 'niveau', form: { kind: 'level', unit: 'dB', unitText: ' dB' } },
            { parameter: 'pan', at: 'panoramique', form: { kind: 'pan', left: -100, centre: 0, right: 100 } },
            { parameter: 'tune', at: 'désaccord', form: { kind: 'tuning', unit: 'cents' } },
            {
              parameter: 'ampeg_attack',
              at: 'attaque',
              form: { kind: 'time', unit: 'milliseconds', unitText: ' ms' },
            },
          ],
        },
      ],
    },
  };
}
