import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, nameOf } from './invented';

/** German names with decimal commas; note names with C4 for key 60, levels as factors, ja and nein, velocities inherited. */
const vocabulary: Vocabulary = {
  name: 'Orgelboden',
  levels: [
    { element: 'Orgelboden', is: 'instrument', parameters: [] },
    {
      element: 'Windlade',
      is: 'group',
      parameters: [
        { parameter: 'group_label', at: '@Bezeichnung', form: { kind: 'text' } },
        { parameter: 'lovel', at: 'Anschlag/@von', form: { kind: 'velocity', most: 127 } },
        { parameter: 'hivel', at: 'Anschlag/@bis', form: { kind: 'velocity', most: 127 } },
      ],
    },
    {
      element: 'Pfeife',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@Datei', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@TasteVon', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        { parameter: 'hikey', at: '@TasteBis', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        {
          parameter: 'pitch_keycenter',
          at: '@Grundton',
          form: { kind: 'key', written: 'name', middleC: 'C4' },
        },
        { parameter: 'volume', at: '@Pegel', form: { kind: 'level', unit: 'factor' } },
        { parameter: 'pan', at: '@Panorama', form: { kind: 'pan', left: -100, centre: 0, right: 100 } },
        {
          parameter: 'tune',
          at: '@Feinstimmung',
          form: { kind: 'tuning', unit: 'cents', unitText: ' Cent' },
        },
        {
          parameter: 'loop_mode',
          at: 'Schleife/@an',
          form: { kind: 'words', words: { ja: 'loop_continuous', nein: 'no_loop' } },
        },
        { parameter: 'loop_start', at: 'Schleife/@Anfang', form: { kind: 'position', unit: 'frames' } },
        { parameter: 'loop_end', at: 'Schleife/@Ende', form: { kind: 'position', unit: 'frames' } },
      ],
    },
  ],
};

const labels = ['leise', 'mittel', 'kräftig', 'laut'];

export function organLoft(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = ['<?xml version="1.0" encoding="UTF-8"?>', '<Orgelboden Erbaut="1712">'];
  let chest = -1;
  for (const one of invented()) {
    const label = labels[one.layer];
    if (one.layer !== chest) {
      if (chest >= 0) lines.push('  </Windlade>');
      chest = one.layer;
      lines.push(
        `  <Windlade Bezeichnung="${label}">`,
        `    <Anschlag${attributes({ von: one.lowVelocity, bis: one.highVelocity })}/>`,
      );
    }
    const sample = `Pfeifen/${label}/${one.rootName.replace('#', 'is')} ${one.take}.wav`;
    const factor = 30 + one.vary(70);
    const pan = one.vary(41) * 5 - 100;
    const tune = one.vary(201) / 10 - 10;
    const loops = one.zone % 5 !== 0;
    samples.set(
      sample,
      facts(one.frames, 48000, {
        rootKey: one.root,
        ...(loops && { loop: [one.loopStart, one.loopEnd] as const }),
      }),
    );
    regions.push({
      group_label: label,
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      volume: 20 * Math.log10(factor / 100),
      pan,
      tune,
      loop_mode: loops ? 'loop_continuous' : 'no_loop',
      ...(loops && { loop_start: one.loopStart, loop_end: one.loopEnd }),
    });
    const values = attributes({
      Datei: sample,
      TasteVon: nameOf(one.low, 4),
      TasteBis: nameOf(one.high, 4),
      Grundton: nameOf(one.root, 4),
      Pegel: (factor / 100).toFixed(2).replace('.', ','),
      Panorama: pan,
      Feinstimmung: `${tune.toFixed(1).replace('.', ',')} Cent`,
    });
    const loop = loops ? { an: 'ja', Anfang: one.loopStart, Ende: one.loopEnd } : { an: 'nein' };
    lines.push(`    <Pfeife${values}>`, `      <Schleife${attributes(loop)}/>`, '    </Pfeife>');
  }
  lines.push('  </Windlade>', '</Orgelboden>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
