import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { folderWith, run } from '../runInFolder';

/** A WAV file of 16 bits that holds whole values. */
function wav(values: readonly number[], rate = 44100): Uint8Array {
  const file = new wavefile.WaveFile();
  file.fromScratch(1, rate, '16', values);
  return file.toBuffer();
}

/** The values of the two channels of a file that a render wrote, as whole numbers of 24 bits or as they are. */
function read(path: string): { channels: number[][]; rate: number; bits: string } {
  const file = new wavefile.WaveFile(readFileSync(path));
  const { sampleRate } = file.fmt as { sampleRate: number };
  const [left, right] = file.getSamples(false) as unknown as [Float64Array, Float64Array];
  return { channels: [[...left], [...right]], rate: sampleRate, bits: file.bitDepth };
}

const ramp = Array.from({ length: 3000 }, (_, at) => (at % 200) * 100 - 9900);
const text =
  '<region> sample=a.wav key=60 pan=-100 loop_mode=one_shot\n<region> sample=*sine key=64 ampeg_release=0.1\n';

function folder(instrument = text): string {
  return folderWith({ 'i.sfz': instrument, 'a.wav': wav(ramp) });
}

/** A MIDI file of format 0 and 480 ticks a quarter note whose only track claims a length; byte by byte after Standard MIDI Files 1.0. */
function midiFile(track: readonly number[], claimed = track.length): Uint8Array {
  const length = [24, 16, 8, 0].map((shift) => (claimed >>> shift) & 255);
  const header = [...'MThd'].map((letter) => letter.charCodeAt(0));
  const name = [...'MTrk'].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from([...header, 0, 0, 0, 6, 0, 0, 0, 1, 1, 0xe0, ...name, ...length, ...track]);
}

const ends = [0, 0xff, 0x2f, 0];
const oddMidi = {
  'cut.mid': midiFile([0, 0x90, 60, 100, ...ends], 0xffffffff),
  'empty.mid': midiFile([]).subarray(0, 14),
  // The longest time that one event can wait, 2^28 - 1 ticks.
  'days.mid': midiFile([0, 0x90, 60, 100, 0xff, 0xff, 0xff, 0x7f, 0x80, 60, 0, ...ends]),
};

describe('render', () => {
  it('writes 24-bit stereo that begins with the note, holds its frames as they are and ends where the voice does', async () => {
    const at = folder();
    const answer = await run(at, [
      'render',
      'i.sfz',
      '--key',
      'C4',
      '--velocity',
      '127',
      '--output',
      'o.wav',
    ]);
    expect({ status: answer.status, error: answer.error }).toEqual({ status: 0, error: '' });
    const { channels, rate, bits } = read(join(at, 'o.wav'));
    expect({ rate, bits }).toEqual({ rate: 44100, bits: '24' });
    expect(channels[0]).toEqual(ramp.map((value) => value * 256));
    expect(channels[1].every((value) => value === 0)).toBe(true);
  });

  it('says as JSON what was played and what is not rendered', async () => {
    const at = folder(`${text}<group>\n<region> sample=a.wav key=60 fil_type=comb cutoff=500 effect1=50\n`);
    const { out } = await run(at, [
      'render',
      'i.sfz',
      '--key',
      '60',
      '--output',
      'o.wav',
      '--format',
      'json',
    ]);
    const told = JSON.parse(out);
    expect(told).toMatchObject({
      sampleRate: 44100,
      frames: 3000,
      notes: [
        {
          seconds: 0,
          key: 60,
          velocity: 100,
          regions: [
            { line: 1, sample: 'a.wav' },
            { line: 4, sample: 'a.wav' },
          ],
        },
      ],
      notRendered: [
        { opcode: 'fil_type', value: 'comb', count: 1, line: 4 },
        { opcode: 'effect1', count: 1, line: 4 },
      ],
    });
    expect(told.choices.length).toBeGreaterThan(20);
  });

  it('gives the same bytes each time, and others with another seed', async () => {
    const at = folder('<region> sample=a.wav amp_random=20 pitch_random=300\n');
    const render = async (seed: string) => {
      await run(at, ['render', 'i.sfz', '--keys', '58-62', '--seed', seed, '--output', 'o.wav']);
      return readFileSync(join(at, 'o.wav')).toString('base64');
    };
    const first = await render('1');
    expect(await render('1')).toBe(first);
    expect(await render('2')).not.toBe(first);
  });

  it('plays keys one after the other, each when the one before has died away', async () => {
    const at = folder('<region> sample=*sine ampeg_release=0.5\n');
    const args = [
      'render',
      'i.sfz',
      '--keys',
      'A4-B4',
      '--hold',
      '0.2',
      '--output',
      'o.wav',
      '--format',
      'json',
    ];
    const { notes } = JSON.parse((await run(at, args)).out);
    expect(notes.map(({ key }: { key: number }) => key)).toEqual([69, 70, 71]);
    const starts = notes.map(({ seconds }: { seconds: number }) => seconds);
    expect(starts[1]).toBeGreaterThanOrEqual(0.7);
    expect(starts[1]).toBeLessThan(0.75);
  });

  it('plays a Standard MIDI File, its tempo and its controllers', async () => {
    const at = folder(
      '<region> sample=*sine key=69 amplitude_oncc1=100 ampeg_release=0 loop_mode=loop_continuous\n',
    );
    const midi = writeMidi({
      header: { format: 1, numTracks: 2, ticksPerBeat: 100 },
      tracks: [
        [
          { deltaTime: 0, type: 'setTempo', microsecondsPerBeat: 250_000, meta: true },
          { deltaTime: 0, type: 'endOfTrack', meta: true },
        ],
        [
          { deltaTime: 0, type: 'controller', channel: 0, controllerType: 1, value: 127 },
          { deltaTime: 100, type: 'noteOn', channel: 0, noteNumber: 69, velocity: 127 },
          { deltaTime: 100, type: 'noteOff', channel: 0, noteNumber: 69, velocity: 0 },
          { deltaTime: 0, type: 'endOfTrack', meta: true },
        ],
      ],
    });
    const path = join(at, 'song.mid');
    await import('node:fs').then(({ writeFileSync }) => writeFileSync(path, Uint8Array.from(midi)));
    const answer = await run(at, ['render', 'i.sfz', '--midi', 'song.mid', '--output', 'o.wav']);
    expect(answer.status).toBe(0);
    const [left] = read(join(at, 'o.wav')).channels;
    // A quarter note of 250 ms of rest, then one of sound.
    expect(left.slice(0, 11025).every((value) => value === 0)).toBe(true);
    expect(left.length).toBe(22050);
    expect(Math.max(...left) / 2 ** 23).toBeCloseTo(Math.SQRT1_2, 3);
  });

  it('says what goes over full scale, cuts it off there, and keeps it with --float', async () => {
    const at = folder('<region> sample=*sine volume=12 ampeg_release=0\n');
    const loud = await run(at, ['render', 'i.sfz', '--key', '60', '--velocity', '127', '--output', 'o.wav']);
    expect(loud.error).toMatch(/frames are above full scale \(peak 9\.0 dB\) and cut off\. --float/);
    expect(Math.max(...read(join(at, 'o.wav')).channels[0])).toBe(0x7fffff);
    await run(at, ['render', 'i.sfz', '--key', '60', '--velocity', '127', '--output', 'f.wav', '--float']);
    const { channels, bits } = read(join(at, 'f.wav'));
    expect(bits).toBe('32f');
    expect(20 * Math.log10(Math.max(...channels[0]))).toBeCloseTo(12 - 3.0103, 2);
  });

  it('tells what keeps it from sounding', async () => {
    const at = folder('<region> sample=gone.wav key=60\n<region> sample=bad.wav key=61\n');
    await import('node:fs').then(({ writeFileSync }) => writeFileSync(join(at, 'bad.wav'), 'no audio'));
    const gone = await run(at, ['render', 'i.sfz', '--keys', '60-61', '--output', 'o.wav']);
    expect(gone.status).toBe(0);
    expect(gone.error).toMatch(/Nothing sounds/);
    expect(read(join(at, 'o.wav')).channels[0]).toHaveLength(0);
  });

  it.each([
    [['--key', '60'], /needs --output/],
    [['--output', 'o.wav'], /needs one of --key, --keys and --midi/],
    [['--key', '60', '--keys', '1-2', '--output', 'o.wav'], /needs one of/],
    [['--key', 'H4', '--output', 'o.wav'], /--key takes a key/],
    [['--keys', '72-60', '--output', 'o.wav'], /C5 is above C4/],
    [['--keys', '60', '--output', 'o.wav'], /--keys takes a range/],
    [['--key', '60', '--hold', 'long', '--output', 'o.wav'], /--hold takes seconds/],
    [['--key', '60', '--rate', '1', '--output', 'o.wav'], /--rate takes a whole number/],
    [['--midi', 'a.wav', '--output', 'o.wav'], /a\.wav: this is no Standard MIDI File/],
    [['--midi', 'a.wav', '--hold', '1', '--output', 'o.wav'], /--hold is for --key/],
    [['--midi', 'cut.mid', '--output', 'o.wav'], /cut\.mid: it is cut short: .* 4294967295 bytes/],
    [['--midi', 'empty.mid', '--output', 'o.wav'], /empty\.mid: it holds no track/],
    [
      ['--midi', 'days.mid', '--output', 'o.wav'],
      /lasts 77\.\d hours, .* holds at most 4\.5; render it in parts/,
    ],
    [['--key', '60', '--output', 'a.wav'], /would replace a file that the command reads; .*--force/],
    [['--key', '60', '--output', 'i.sfz'], /would replace a file that the command reads/],
    [['--key', '60', '--output', 'other.txt'], /file of another kind/],
  ])('refuses %j in one line', async (args, message) => {
    const at = folderWith({ 'i.sfz': text, 'a.wav': wav(ramp), 'other.txt': 'hello', ...oddMidi });
    const { status, error, out } = await run(at, ['render', 'i.sfz', ...args]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(error).toMatch(message);
    expect(error.trim().split('\n')).toHaveLength(1);
    expect(readFileSync(join(at, 'other.txt'), 'utf8')).toBe('hello');
  });
});
