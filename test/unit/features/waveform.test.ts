import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../../server/features/hover/hover';
import { playedPart } from '../../../server/features/hover/playedPart';
import { pictureMarkdown, waveformPicture } from '../../../server/features/hover/waveformPicture';
import type { SampleFacts } from '../../../server/model/samples';
import { readSfz } from '../../../server/sfz/read';
import { SampleOutlines } from '../../../server/workspace/samples/sampleOutlines';
import { readXml } from '../../../server/xml/read';
import { waveBytes } from '../server/host/waveBytes';
import { MemoryFiles } from '../workspace/memoryFiles';
import { documentWithMark } from './documentWithMark';

/** A WAV file whose frame values a function gives, full scale from −1 to 1. */
function wave(frames: number, value: (frame: number) => number): Buffer {
  const bytes = waveBytes(frames);
  for (let frame = 0; frame < frames; frame++)
    bytes.writeInt16LE(Math.round(value(frame) * 32767), 44 + 2 * frame);
  return bytes;
}

const facts: SampleFacts = {
  container: 'wav',
  encoding: 'pcm',
  sampleRate: 44_100,
  channels: 1,
  bitsPerSample: 16,
  frames: 1000,
  lengthSeconds: 1000 / 44_100,
  loops: [],
  rootKey: null,
  fineTuneCents: null,
  problems: [],
};

describe('the outline of a sample', () => {
  it('has the lowest and highest value of each part', async () => {
    const files = new MemoryFiles({ '/a.wav': wave(9600, (frame) => (frame < 4800 ? 0.5 : -0.25)) });
    const outline = await new SampleOutlines(files).outline('/a.wav');
    expect(outline?.frames).toBe(9600);
    expect(outline?.highest[0]).toBeCloseTo(0.5, 3);
    expect(outline?.lowest.at(-1)).toBeCloseTo(-0.25, 3);
  });

  it('reads a bounded part of a long file', async () => {
    const frames = 2_000_000;
    const files = new MemoryFiles({ '/a.wav': wave(frames, () => 0.5) });
    let read = 0;
    const open = files.open.bind(files);
    files.open = async (path) => {
      const reader = await open(path);
      return (
        reader && {
          ...reader,
          read: (start, length) => {
            read += length;
            return reader.read(start, length);
          },
        }
      );
    };
    const outlines = new SampleOutlines(files);
    expect((await outlines.outline('/a.wav'))?.highest.at(-1)).toBeCloseTo(0.5, 3);
    expect(read).toBeLessThan((frames * 2) / 10);
    const before = read;
    await outlines.outline('/a.wav');
    expect(read).toBe(before);
  });

  it('is none where the audio is not decoded, is not there or is empty', async () => {
    const files = new MemoryFiles({ '/a.flac': 'fLaC', '/empty.wav': waveBytes(0) });
    const outlines = new SampleOutlines(files);
    for (const path of ['/a.flac', '/empty.wav', '/none.wav'])
      expect(await outlines.outline(path)).toBeUndefined();
  });
});

describe('what is played of a sample', () => {
  const played = (text: string, more: Partial<SampleFacts> = {}) => {
    const instrument = readSfz(text, { path: 'a.sfz' });
    return playedPart(instrument, instrument.regions[0], { ...facts, ...more });
  };

  it('goes from offset to end, both counted from 0', () => {
    expect(played('<region> sample=a.wav')).toEqual({ start: 0, end: 999 });
    expect(played('<group> offset=100 <region> end=500')).toEqual({ start: 100, end: 500 });
    expect(played('<region> offset=50 offset_mode=percent')).toMatchObject({ start: 500 });
    expect(played('<region> offset=5000 end=5000')).toEqual({ start: 999, end: 999 });
  });

  it('loops as the mode says, else as the file does', () => {
    // Public documentation of the open SFZ format: without loop_mode a file that carries a loop is looped.
    const loops = [{ start: 10, end: 20, type: 'forward' as const }];
    expect(played('<region>', { loops }).loop).toEqual({ start: 10, end: 20 });
    expect(played('<region> loop_mode=no_loop', { loops }).loop).toBeUndefined();
    expect(played('<region> loop_start=5 loop_end=50').loop).toBeUndefined();
    expect(played('<region> loop_mode=loop_sustain loop_start=5', { loops }).loop).toEqual({
      start: 5,
      end: 20,
    });
  });
});

describe('the picture', () => {
  const outline = { frames: 100, lowest: [-1, -0.5, 0, 0], highest: [1, 0.5, 0, 0] };

  it('is well-formed and marks offset, end and loop', () => {
    const svg = waveformPicture(outline, { start: 10, end: 89, loop: { start: 20, end: 69 } });
    expect(readXml(svg, { path: 'a.xml' }).findings.filter(({ code }) => code === 'syntax-error')).toEqual(
      [],
    );
    // A tenth of 288 units on either side, the loop from a fifth to seven tenths.
    for (const x of ['M28.8 0', 'M259.2 0', 'M57.6 0', 'M201.6 0']) expect(svg).toContain(x);
    expect(waveformPicture(outline, { start: 0, end: 99 })).not.toMatch(/<rect|V56/);
  });

  it('stands in Markdown as an address without characters that end it', () => {
    const markdown = pictureMarkdown('<svg>()</svg>', 'a [b]');
    expect(markdown).toMatch(
      /^!\[a b\]\(data:image\/svg\+xml;base64,[A-Za-z0-9+/=]+\|width=\d+,height=\d+\)$/,
    );
  });
});

describe('hover', () => {
  it('shows a sample with what is played of it', async () => {
    const bytes = wave(1000, Math.sin);
    const marked = '<group> offset=100\n<region> sample=a$0.wav end=899';
    const { document, offset } = await documentWithMark(marked, { '/music/a.wav': bytes });
    const outlines = new SampleOutlines(new MemoryFiles({ '/music/a.wav': bytes }));
    const shown = await hoverAt({ ...document, outline: (path) => outlines.outline(path) }, offset);
    expect(shown?.markdown).toContain('data:image/svg+xml');
    expect(shown?.markdown).toContain('Plays frames 100 to 899, without a loop.');
    expect((await hoverAt(document, offset))?.markdown).not.toContain('data:');
  });

  it('leads to where a value comes from', async () => {
    const { document, offset } = await documentWithMark('<group> volume=-3\n<region> volume=-$06');
    const linkTo = (source: number, line: number) => `file:///music/main.sfz#${source}L${line}`;
    const shown = await hoverAt({ ...document, linkTo }, offset);
    expect(shown?.markdown).toContain(
      'Overrides `-3` from [the group in line 1](<file:///music/main.sfz#0L1>).',
    );
  });
});
