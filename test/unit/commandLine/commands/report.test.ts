import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { folderWith, run } from '../runInFolder';

function tone(hertz: number): Uint8Array {
  const wav = new wavefile.WaveFile();
  const frames = Float64Array.from({ length: 44100 }, (_, at) =>
    Math.sin((2 * Math.PI * hertz * at) / 44100),
  );
  wav.fromScratch(1, 44100, '32f', frames);
  return wav.toBuffer();
}

/** Three notes, the second an octave too low (A3 = 220 Hz, ISO 16). */
const files = () => ({
  'x/a.sfz': `<region> sample=s/a.wav lokey=68 hikey=70 pitch_keycenter=69
<region> sample=s/b.wav lokey=71 hikey=82 pitch_keycenter=69
<region> sample=s/c.wav lokey=83 hikey=90 pitch_keycenter=81
<region> sample=s/gone.wav key=91
`,
  'x/s/a.wav': tone(440),
  'x/s/b.wav': tone(220),
  'x/s/c.wav': tone(880),
});

describe('report', () => {
  it('is a page of Markdown', async () => {
    const { out, error, status } = await run(folderWith(files()), ['report', 'x/a.sfz']);
    expect({ error, status }).toEqual({ error: '', status: 0 });
    expect(out).toContain('# Samples of a.sfz');
    expect(out).toMatch(/\| 69 \(A4\) +\| +2 \|/);
    expect(out).toContain('b.wav: an octave below');
    expect(out).toContain('there is no such file');
  });

  it('is a page that needs nothing besides itself, what is worst first', async () => {
    const { out, error, status } = await run(folderWith(files()), ['report', 'x/a.sfz', '--format', 'html']);
    expect({ error, status }).toEqual({ error: '', status: 0 });
    expect(out).not.toMatch(/<script|https?:|<link|\bid="/);
    const files3 = [...out.matchAll(/<h3 class="file">([^<]*)/g)].map(([, name]) => name);
    expect(files3.sort()).toEqual(['s/b.wav', 's/gone.wav']);
    expect(out).toContain('<strong>sounds an octave below its root key</strong>');
    // Full-scale sines of 440, 220 and 880 Hz are loud, and all of the same loudness but for the weighting of frequencies.
    expect(out).toMatch(/G#4 to A#4, no group: −[23](\.\d)? LUFS/);
    const body = out.slice(out.indexOf('All samples, worst first</h2>'));
    const named = [...body.matchAll(/<tr><td>([^<]*)/g)].map(([, name]) => name);
    expect(named.slice(2)).toEqual(['s/a.wav', 's/c.wav']);
  });

  it('is comma-separated values of samples, or of tuning', async () => {
    const folder = folderWith(files());
    const samples = await run(folder, ['report', 'x/a.sfz', '--format', 'csv']);
    const read = (text: string) =>
      Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
    expect(read(samples.out)).toMatchObject([
      { File: 's/a.wav', 'Cents off': '0', Container: 'wav', Notes: '' },
      { File: 's/b.wav', 'Cents off': '-1200', 'Sounds at key': '57 (A3) +0 cents' },
      { File: 's/c.wav', 'Cents off': '0' },
      { File: 's/gone.wav', Notes: 'there is no such file' },
    ]);
    const tuning = await run(folder, ['report', 'x/a.sfz', '--format', 'csv', '--table', 'tuning']);
    expect(read(tuning.out).map(({ Key, Samples }) => [Key, Samples])).toEqual([
      ['69 (A4)', '2'],
      ['81 (A5)', '1'],
    ]);
  });

  it('goes to a file, whole or not at all', async () => {
    const folder = folderWith(files());
    const args = ['report', 'x/a.sfz', '--format', 'csv', '--output'];
    expect(await run(folder, [...args, 'report.csv'])).toEqual({ out: '', error: '', status: 0 });
    expect(readFileSync(join(folder, 'report.csv'), 'utf8')).toMatch(/^File,Regions,/);
    const { status, error } = await run(folder, [...args, 'none/report.csv']);
    expect([status, error]).toEqual([
      2,
      'zonewright: none/report.csv: cannot be written: its folder does not exist\n',
    ]);
  });

  it('says what it cannot do', async () => {
    const folder = folderWith({ ...files(), 't.tsv': 'Sample\tLow\tHigh\na.wav\t60\t61\nb.wav\t62\t63\n' });
    const errors: string[] = [];
    for (const args of [
      [],
      ['x/a.sfz', 'x/b.sfz'],
      ['gone.sfz'],
      ['t.tsv'],
      ['x/a.sfz', '--table', 'tuning'],
    ]) {
      const { status, error, out } = await run(folder, ['report', ...args]);
      expect([status, out]).toEqual([2, '']);
      errors.push(error);
    }
    expect(errors).toEqual([
      'zonewright: report takes one instrument\n',
      'zonewright: report takes one instrument\n',
      'zonewright: gone.sfz: there is no such file, or it cannot be read\n',
      'zonewright: t.tsv: this is a zone table; convert it first, then report on the result\n',
      'zonewright: --table is for --format csv; the others hold both tables\n',
    ]);
  });
});
