import { describe, expect, it } from 'vitest';
import { converted } from './dialect';

const jars = (own: readonly string[], says = '') =>
  `<jars>${says}\n${own
    .map((one, at) => `<jar clip="${at}.wav" lo="${40 + at}" hi="${40 + at}" root="${40 + at}" ${one}/>\n`)
    .join('')}</jars>`;
const region = (values: string) => `<region> sample=new.wav lokey=50 hikey=52 pitch_keycenter=51 ${values}\n`;

describe('a template in a dialect', () => {
  it('takes a transposition into a tuning in semitones', async () => {
    const template = jars(['move="0.07"', 'move="-12"'], '<!-- move: semitones -->');
    const { text, notes } = await converted(template, region('transpose=7 tune=-5') + region('transpose=-1'));
    expect(text).toContain('move="6.95"');
    expect(text).toContain('move="-1"');
    expect(notes).toContain('transpose=7 is written in the tuning, which becomes 695 cents.');
    expect(notes.join('\n')).not.toContain('no place');
  });

  it.each([
    ['<!-- force: level in percent of the amplitude -->', ['force="100"', 'force="60"'], ['25', '50', '0']],
    ['<!-- force: gain in dB -->', ['force="0"', 'force="-6"'], ['-12.0412', '-6.0206', '-144']],
  ])('takes an amplitude into the only place for a level: %s', async (says, own, levels) => {
    const { text, notes } = await converted(
      jars(own, says),
      region('amplitude=50 volume=-6.0206') + region('amplitude=50') + region('amplitude=0'),
    );
    const written = Array.from(text.matchAll(/force="([^"]*)"/g), ([, level]) => Number(level));
    for (const [at, level] of levels.entries()) expect(written[at]).toBeCloseTo(Number(level), 3);
    expect(notes).toContain('amplitude=50 is written in the level, which becomes -6.02 dB.');
    expect(notes.join('\n')).not.toContain('no place');
  });

  it.each([
    ['<!-- force: 0 to 127, linear in amplitude -->', ['force="127"', 'force="60"'], '127'],
    ['<!-- force: 0 to 100 percent of the amplitude -->', ['force="100"', 'force="60"'], '100'],
    ['<!-- force: amplitude from 0 to 1 -->', ['force="1"', 'force="0.5"'], '1'],
  ])('holds a level that is louder than its scale at the top of that: %s', async (says, own, top) => {
    const { text, notes } = await converted(jars(own, says), region('volume=4') + region('volume=-6.0206'));
    expect(text).toContain(`force="${top}"`);
    expect(notes).toContain(
      `volume=4 is written as 0, because the scale there ends at ${top}. That is 4 dB quieter.`,
    );
    const [, half = ''] = [...text.matchAll(/force="([^"]*)"/g)].map(([, number]) => number);
    expect(Number(half)).toBeCloseTo(Number(top) / 2, 3);
  });

  it('refuses a template of whose places none is known to hold keys', async () => {
    const template =
      '<jars><jar clip="a.wav" wide="9" softest="1" loudest="60"/><jar clip="b.wav" wide="9" softest="61" loudest="127"/></jars>';
    await expect(converted(template, region(''))).rejects.toThrow(
      'no place in the template is known to hold keys',
    );
  });

  it('leaves out what its words cannot say, and not what the example says', async () => {
    const template = jars(['place="left"', 'place="right"', 'place="centre"']);
    const { text, notes } = await converted(template, region('pan=-35') + region('pan=100'));
    expect(text.match(/place="\w+"/g)).toEqual(['place="right"']);
    expect(notes.join('\n')).toContain('pan=-35 has no place');
  });

  it('counts in the sample rate that stands beside', async () => {
    const template = jars([
      'rate="48000" loopFrom="0.5" loopTo="1.25"',
      'rate="48000" loopFrom="0.25" loopTo="2"',
    ]);
    const { text } = await converted(
      template,
      region('loop_mode=loop_continuous loop_start=48000 loop_end=96000'),
    );
    expect(text).toContain('loopFrom="1" loopTo="2"');
  });

  it('tells of what it does not understand, and of nothing that it writes', async () => {
    const template = jars(['glaze="3" silences="0"', 'glaze="3" silences="1"']);
    const { text, notes } = await converted(template, region('group=3 off_by=3'));
    expect(text).toContain('glaze="3" silences="3"');
    expect(notes.join('\n')).toContain('glaze="3" of <jar> is not read');
    expect(notes.join('\n')).not.toContain('group');
  });

  it('does not tell of a loop that starts at 0 as of one without its start', async () => {
    const template = `<jars>${['start="90" length="500"', 'start="0" length="0"']
      .map(
        (loop, at) =>
          `<jar clip="${at}.wav" lo="${at}" hi="${at}" root="${at}"><loop kind="${at === 0 ? 'forever' : 'none'}" ${loop}/></jar>`,
      )
      .join('')}</jars>`;
    const loop = 'loop_mode=loop_continuous loop_start=0 loop_end=999';
    const { text, notes } = await converted(template, region(loop));
    expect(text).toContain('<loop kind="forever" start="0" length="1000"/>');
    expect(notes).toEqual([]);
  });

  it('writes no points of a loop for what does not loop, where those alone say so', async () => {
    const template =
      '<jars><jar clip="a.wav" lo="40" hi="41" root="40"><loop from="90" length="50"/></jar>' +
      '<jar clip="b.wav" lo="42" hi="43" root="42"/></jars>';
    const points = 'loop_start=5 loop_end=900';
    const { text, notes } = await converted(template, region(`loop_mode=no_loop ${points}`) + region(points));
    expect(text.match(/<loop[^>]*>/g)).toEqual(['<loop from="5" length="896"/>']);
    expect(notes).toContain('loop_end=900 has no place in the template, so it is left out.');
  });

  it('takes a velocity between 0 and 1 for one whose explanation says `no`', async () => {
    const template =
      '<jars><!-- vmin/vmax: 0 = no touch, 1 = hardest (MIDI 127) -->' +
      '<shelf vmin="0" vmax="0.5"><jar clip="a.wav" lo="40" hi="45" root="42"/><jar clip="b.wav" lo="46" hi="50" root="48"/></shelf>' +
      '<shelf vmin="0.5" vmax="1"><jar clip="c.wav" lo="40" hi="50" root="45"/></shelf></jars>';
    const { text } = await converted(
      template,
      `<group> hivel=30\n${region('')}<group> lovel=31 hivel=90\n${region('')}<group> lovel=91\n${region('')}`,
    );
    const bounds = Array.from(text.matchAll(/vm(?:in|ax)="([^"]*)"/g), ([, bound]) =>
      Math.floor(Number(bound) * 127),
    );
    // Bounds lie between two velocities.
    expect(bounds).toEqual([0, 30, 30, 90, 90, 127]);
  });
});
