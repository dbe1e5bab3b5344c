import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './example';
import { attributes, facts, invented, layerWords } from './invented';

/**
 * The path as the region's own text, in the other slashes, without folder and ending; names with points and a prefix, velocities
 * in percent whose layers share their bounds, loops as percentages of the length, a constant of the whole in an outer element.
 */
const vocabulary: Vocabulary = {
  name: 'Branch railway',
  levels: [
    {
      element: 'rail:Timetable',
      is: 'instrument',
      parameters: [
        {
          parameter: 'trigger',
          at: '@Played.On',
          form: { kind: 'words', words: { press: 'attack', release: 'release' } },
        },
      ],
    },
    {
      element: 'rail:Train',
      is: 'region',
      inside: ['rail:Line', 'rail:Station'],
      parameters: [
        {
          parameter: 'sample',
          at: '.',
          form: { kind: 'path', folder: 'Sheds', ending: '.wav', separator: '\\' },
        },
        { parameter: 'lokey', at: '@Pitch.Lowest', form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: '@Pitch.Highest', form: { kind: 'key', written: 'number' } },
        { parameter: 'pitch_keycenter', at: '@Pitch.Original', form: { kind: 'key', written: 'number' } },
        {
          parameter: 'lovel',
          at: '@Velocity.Minimum',
          form: { kind: 'velocity', most: 100, touching: true, unitText: '%' },
        },
        {
          parameter: 'hivel',
          at: '@Velocity.Maximum',
          form: { kind: 'velocity', most: 100, touching: true, unitText: '%' },
        },
        { parameter: 'volume', at: '@Level.Decibels', form: { kind: 'level', unit: 'dB' } },
        {
          parameter: 'loop_start',
          at: '@Loop.Start',
          form: { kind: 'position', unit: 'percent', unitText: '%' },
        },
        {
          parameter: 'loop_end',
          at: '@Loop.End',
          form: { kind: 'position', unit: 'percent', last: 'excluded', unitText: '%' },
        },
        { parameter: 'group', at: '@Choke.Group', form: { kind: 'number' } },
        { parameter: 'off_by', at: '@Choked.By', form: { kind: 'number' } },
      ],
    },
  ],
};

export function railway(): Example {
  const samples = new Map<string, ReturnType<typeof facts>>();
  const regions: TrueValues[] = [];
  const lines = [
    '<rail:Timetable xmlns:rail="urn:example:timetable" Played.On="press">',
    ' <rail:Line>',
    '  <rail:Station>',
  ];
  for (const one of invented()) {
    const name = `${layerWords[one.layer]}/Engine ${one.root} (${one.take})`;
    const sample = `Sheds/${name}.wav`;
    const volume = one.vary(37) / 3 - 6;
    const frames = (30 + one.vary(25)) * 1000;
    // Tenths of a percent of a round number of frames are whole frames.
    const loopStart = 100 + one.vary(200);
    const loopEnd = 500 + one.vary(450);
    samples.set(
      sample,
      facts(frames, 44100, { loop: [(loopStart * frames) / 1000, (loopEnd * frames) / 1000 - 1] }),
    );
    regions.push({
      trigger: 'attack',
      sample,
      lokey: one.low,
      hikey: one.high,
      pitch_keycenter: one.root,
      // A quarter of 127 is 31.75, so the bounds 25, 50 and 75 % lie above 31, 63 and 95.
      lovel: one.lowVelocity,
      hivel: one.highVelocity,
      volume: Number(volume.toFixed(2)),
      loop_start: (loopStart * frames) / 1000,
      loop_end: (loopEnd * frames) / 1000 - 1,
      group: one.take,
      off_by: 3 - one.take,
    });
    const values = attributes({
      'Pitch.Lowest': one.low,
      'Pitch.Highest': one.high,
      'Pitch.Original': one.root,
      'Velocity.Minimum': `${one.layer * 25}%`,
      'Velocity.Maximum': `${one.layer * 25 + 25}%`,
      'Level.Decibels': volume.toFixed(2),
      'Loop.Start': `${loopStart / 10}%`,
      'Loop.End': `${loopEnd / 10}%`,
      'Choke.Group': one.take,
      'Choked.By': 3 - one.take,
    });
    lines.push(`   <rail:Train${values}>${name.replaceAll('/', '\\')}</rail:Train>`);
  }
  lines.push('  </rail:Station>', ' </rail:Line>', '</rail:Timetable>', '');
  return { vocabulary, regions, text: lines.join('\n'), samples };
}
