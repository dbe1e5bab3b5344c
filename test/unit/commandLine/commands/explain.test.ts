import { describe, expect, it } from 'vitest';
import { silentReasons } from '../../../../server/playing/player/conditions';
import { waveBytes } from '../../server/host/waveBytes';
import { folderWith, run } from '../runInFolder';

interface Place {
  line: number;
  file?: string;
  sample: string | null;
}

interface Explained {
  sounds: Place[];
  silent: (Place & { reason: string; message: string })[];
}

/** Explains a note of an instrument file in a folder where `a.wav` is the one sample that there is. */
async function explained(text: string, args: readonly string[], name = 'bells.sfz'): Promise<Explained> {
  const folder = folderWith({ [name]: text, 'a.wav': waveBytes(100), 'noise.wav': 'no audio at all' });
  const answer = await run(folder, ['explain', name, '--format', 'json', ...args]);
  expect(answer.error).toBe('');
  expect(answer.status).toBe(0);
  return JSON.parse(answer.out);
}

const note = ['--key', '60', '--velocity', '100'];

// One line a region; each would sound but for one thing (public documentation of the open SFZ format).
const everyReason = `<control> set_cc20=10
<global> sample=a.wav sw_lokey=20 sw_hikey=24
<region> hikey=59
<region> hivel=99
<region> sw_last=21
<region> locc20=11
<region> seq_length=2 seq_position=2
<region> lorand=1
<region> trigger=release
<region> lobend=1
<region> lochanaft=1
<region> sample=gone.wav
<region> end=-1
<region>`;

describe('zonewright explain', () => {
  it('gives every reason, in the order that is promised', async () => {
    const { sounds, silent } = await explained(everyReason, note);
    expect(sounds).toEqual([{ line: 14, sample: 'a.wav' }]);
    expect(silent.map(({ reason }) => reason)).toEqual([...silentReasons]);
    expect(silent.map(({ line }) => line)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
    expect(silent[9]).toEqual({
      line: 12,
      sample: 'gone.wav',
      reason: 'sample',
      message: 'Its sample file is missing.',
    });
  });

  it('gives the first reason of several that hold', async () => {
    // Each region has the fault of its place in the order and all that come after.
    const faults = [
      'hikey=59',
      'hivel=99',
      'sw_last=21',
      'locc20=11',
      'seq_length=2 seq_position=2',
      'lorand=1',
      'trigger=release',
      'lobend=1',
      'lochanaft=1',
      'sample=gone.wav',
      'end=-1',
    ];
    const regions = faults.map((_, first) => `<region> sample=a.wav ${faults.slice(first).join(' ')}`);
    const { silent } = await explained(regions.join('\n'), note);
    expect(silent.map(({ reason }) => reason)).toEqual([...silentReasons]);
  });

  it('steps through a round robin with the strikes', async () => {
    const text =
      '<group> sample=a.wav seq_length=3\n<region>\n<region> seq_position=2\n<region> seq_position=3';
    for (const [strike, line] of [
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 2],
      [5, 3],
    ]) {
      const { sounds } = await explained(text, [...note, '--strike', String(strike)]);
      expect(sounds.map((place) => place.line)).toEqual([line]);
    }
  });

  it('presses a keyswitch, by number or by name, and moves controllers', async () => {
    const text = `<global> sample=a.wav sw_lokey=24 sw_hikey=25 sw_default=24
<region> sw_last=24
<region> sw_last=c#1
<region> locc1=64
<region> sw_down=25
<region> hicc1=63.5`;
    const lines = async (...more: string[]) =>
      (await explained(text, [...note, ...more])).sounds.map(({ line }) => line);
    expect(await lines()).toEqual([2, 6]);
    expect(await lines('--keyswitch', 'C#1')).toEqual([3, 5, 6]);
    expect(await lines('--controller', '1=64', '--keyswitch', '25')).toEqual([3, 4, 5]);
    expect(await lines('--controller', '1=63.5', '--controller', '2=1')).toEqual([2, 6]);
  });

  it('says what is the matter with a sample', async () => {
    const text = '<region> sample=noise.wav\n<region>\n<region> sample=*sine\n<region> sample=A.WAV';
    const { sounds, silent } = await explained(text, note);
    expect(sounds.map(({ sample }) => sample)).toEqual(['*sine', 'A.WAV']);
    expect(silent).toEqual([
      { line: 1, sample: 'noise.wav', reason: 'sample', message: 'Its sample cannot be read as audio.' },
      { line: 2, sample: null, reason: 'sample', message: 'No sample is set for it.' },
    ]);
  });

  it('reads instrument XML, other vocabularies and zone tables alike', async () => {
    const xml =
      '<instrument>\n  <region sample="a.wav" hivel="63"/>\n  <region sample="a.wav" lovel="64"/>\n</instrument>';
    expect((await explained(xml, note, 'a.instrument.xml')).sounds).toEqual([{ line: 3, sample: 'a.wav' }]);
    const other = `<rack><zone file="a.wav" low="36" high="59" velLow="1" velHigh="127"/>
<zone file="a.wav" low="60" high="72" velLow="1" velHigh="127"/>
<zone file="a.wav" low="73" high="90" velLow="1" velHigh="127"/></rack>`;
    expect((await explained(other, note, 'rack.xml')).sounds).toEqual([{ line: 2, sample: 'a.wav' }]);
    const table = 'Sample\tLow Key\tHigh Key\tRoot\na.wav\t36\t59\t48\na.wav\t60\t72\t66\n';
    expect((await explained(table, note, 'zones.tsv')).sounds).toEqual([{ line: 3, sample: 'a.wav' }]);
  });

  it('names the included file that a region stands in', async () => {
    const folder = folderWith({
      'set/main.sfz': '<global> key=60\n#include "parts/low.sfz"\n',
      'set/parts/low.sfz': '\n<region> sample=*sine',
    });
    const answer = await run(folder, ['explain', 'set/main.sfz', '--format', 'json', ...note]);
    expect(JSON.parse(answer.out).sounds).toEqual([{ line: 2, file: 'set/parts/low.sfz', sample: '*sine' }]);
  });

  it('reads standard input, and groups its text for people', async () => {
    const text = '<global> sample=*sine\n<region>\n<region> hivel=9\n<region> hivel=9\n<region> hikey=2';
    const answer = await run(folderWith({}), ['explain', '-', ...note, '--strike', '2'], text);
    expect(answer.out).toBe(`60 (C4) at velocity 100, struck for the 2nd time: 1 of 4 regions sounds.

Sounds
  line 2: *sine

Silent, by the first reason
  key: 1 region
    It answers keys 0 (C-1) to 2 (D-1), not 60 (C4).
      line 5: *sine
  velocity: 2 regions
    It answers velocities 1 to 9, not 100.
      line 3: *sine
      line 4: *sine
`);
  });

  it('shows control signs of names as pictures, and notes on what a table leaves open', async () => {
    const odd = '<region> sample=bell\u001b[31m.wav';
    expect((await run(folderWith({ 'a.sfz': odd }), ['explain', 'a.sfz', ...note])).out).toContain(
      'bell␛[31m.wav',
    );
    const table = 'Sample\tLow Key\tHigh Key\tRoot\na.wav\tC3\tB3\tE3\n';
    const answer = await run(folderWith({ 'zones.tsv': table }), ['explain', 'zones.tsv', ...note]);
    expect(answer.error).toMatch(/zones\.tsv:\d+: assumed: /);
  });

  it.each([
    [[], /explain takes one file/],
    [['a.sfz'], /explain needs --key and --velocity/],
    [['a.sfz', '--key', '128', '--velocity', '1'], /--key takes a key from 0 to 127/],
    [['a.sfz', '--key', 'H4', '--velocity', '1'], /--key takes/],
    [['a.sfz', '--key', '60', '--velocity', '0'], /--velocity takes a whole number from 1 to 127/],
    [['a.sfz', ...note, '--strike', '0'], /--strike takes a whole number from 1/],
    [['a.sfz', ...note, '--controller', '1'], /--controller takes NUMBER=VALUE/],
    [['a.sfz', ...note, '--controller', '1=128'], /--controller takes/],
    [['a.sfz', ...note, '--controller', '512=1'], /--controller takes/],
    [['a.sfz', ...note, '--keyswitch', '-1'], /--keyswitch/],
    [['gone.sfz', ...note], /gone\.sfz: there is no such file/],
  ])('refuses %j in one line', async (args, message) => {
    const answer = await run(folderWith({ 'a.sfz': '<region>' }), ['explain', ...args]);
    expect(answer.status).toBe(2);
    expect(answer.error).toMatch(message);
    expect(answer.error.trim().split('\n')).toHaveLength(1);
    expect(answer.out).toBe('');
  });
});
