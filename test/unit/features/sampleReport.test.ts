import { createRequire } from 'node:module';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvTable } from '../../../server/features/sampleReport/csv';
import { markdownReport, markdownTable } from '../../../server/features/sampleReport/markdown';
import { pitchDistance } from '../../../server/features/sampleReport/pitchDistance';
import type { ReportCell } from '../../../server/features/sampleReport/reportCells';
import { sampleCells, sampleHeadings, tuningCells } from '../../../server/features/sampleReport/reportCells';
import type { SampleReport } from '../../../server/features/sampleReport/sampleReport';
import { sampleReport } from '../../../server/features/sampleReport/sampleReport';
import type { LoopSeam, MeasuredPitch, SampleLookup, SampleSurvey } from '../../../server/model/samples';
import { sfzNotation } from '../../../server/sfz/notation';
import { readSfz } from '../../../server/sfz/read';
import { samplesInMemory, wav } from '../checks/markedText';

/** A reader of Markdown that others wrote, to read what we write. */
const markdown = (createRequire(import.meta.url)('markdown-it') as () => { render(text: string): string })();

function pitch(key: number, cents = 0, confidence = 0.95): MeasuredPitch {
  return { hertz: 440 * 2 ** ((key + cents / 100 - 69) / 12), key, cents, confidence };
}

function survey(more: Partial<SampleSurvey> = {}): SampleSurvey {
  return {
    frames: 44100,
    peak: 0.5,
    dcOffset: [0],
    leadingSilenceFrames: 441,
    trailingSilenceFrames: 22050,
    endLevelDb: -60,
    endStep: 0,
    greatestEndStep: 0,
    clipping: null,
    channelCorrelation: null,
    isWhole: true,
    hasEqualChannels: false,
    loudness: -20.04,
    momentaryLoudness: -18,
    ...more,
  };
}

/** As much of a seam as a report tells. */
function seam(isAudible: boolean): LoopSeam {
  return { isAudible } as LoopSeam;
}

interface Known {
  pitches?: Record<string, MeasuredPitch | null>;
  surveys?: Record<string, SampleSurvey>;
  states?: Record<string, ReturnType<typeof wav>>;
  audibleLoops?: readonly string[];
}

function report(
  text: string,
  { pitches = {}, surveys = {}, states, audibleLoops = [] }: Known,
): SampleReport {
  const samples: SampleLookup = {
    ...samplesInMemory(states),
    measures: {
      pitch: (path) => pitches[path] ?? null,
      survey: (path) => surveys[path] ?? null,
      loopSeam: (_path, start, end) => seam(audibleLoops.includes(`${start} ${end}`)),
    },
  };
  return sampleReport(readSfz(text, { path: 'a.sfz' }), sfzNotation, samples);
}

/** The cells of each sample by their headings. */
function rows({ samples }: SampleReport): Record<string, ReportCell>[] {
  return samples.map((row) =>
    Object.fromEntries(sampleCells(row).map((cell, column) => [sampleHeadings[column] as string, cell])),
  );
}

describe('the rows of a report', () => {
  it('are one for each sample file, in the order of the regions', () => {
    const text = `<group> sample=b.wav <region> lokey=50 hikey=55 pitch_keycenter=52
<region> lokey=60 hikey=64 pitch_keycenter=60
<region> sample=a.wav key=70 <region> sample=*sine key=71 <region> key=72`;
    const made = report(text, { pitches: { 'a.wav': pitch(70, -12.34) }, surveys: { 'a.wav': survey() } });
    expect(rows(made)).toMatchObject([
      { File: 'b.wav', Regions: 3, Keys: 'keys 50 (D3) to 72 (C5)' },
      {
        File: 'a.wav',
        Regions: 1,
        Keys: 'key 70 (A#4)',
        Container: 'wav',
        Encoding: 'pcm',
        'Rate (Hz)': 44100,
        Bits: 16,
        Channels: 1,
        Frames: 44100,
        'Length (s)': 1,
        'Root key': '70 (A#4)',
        'Sounds at key': '70 (A#4) -12 cents',
        'Cents off': -12.3,
        'Loudness (LUFS)': -20,
        // 20 · log10(0.5) = −6.02 dB.
        'Peak (dB)': -6,
        'Silence at start (s)': 0.01,
        'Silence at end (s)': 0.5,
        Notes: '',
      },
    ]);
  });

  it('have loops of the file and of regions, and say which jump', () => {
    const loops = [{ start: 10, end: 20, type: 'forward' as const }];
    const made = report(
      '<region> sample=a.wav loop_start=5 loop_end=99 key=60 <region> sample=a.wav key=61',
      { states: { 'a.wav': wav({ loops }) }, audibleLoops: ['10 20'] },
    );
    expect(rows(made)[0]).toMatchObject({
      Loops: '5 to 99; 10 to 20',
      Notes: 'the loop 10 to 20 jumps where it closes',
    });
  });

  it('say what is wrong with a file', () => {
    const problems = [{ kind: 'cut-short' as const, message: 'The file is cut short.' }];
    const made = report('<region> sample=gone.wav key=60 <region> sample=a.wav key=61', {
      states: { 'a.wav': wav({ problems, channels: 2 }) },
      surveys: {
        'a.wav': survey({
          clipping: { runs: 2, frames: 9, firstFrame: 77 },
          channelCorrelation: -0.99,
          loudness: null,
        }),
      },
    });
    expect(rows(made)).toMatchObject([
      { File: 'gone.wav', Container: undefined, 'Peak (dB)': undefined, Notes: 'there is no such file' },
      {
        'Loudness (LUFS)': undefined,
        Notes: 'The file is cut short.; clipped in 2 places, first at frame 77; channels in opposite phase',
      },
    ]);
  });
});

describe('the tuning of a report', () => {
  const text = ['c', 'd', 'e', 'f']
    .map(
      (name, at) =>
        `<region> sample=${name}.wav lokey=${60 + 2 * at} hikey=${61 + 2 * at} pitch_keycenter=${60 + 2 * at}`,
    )
    .join('\n');

  it('names keys that are off by an octave or a semitone', () => {
    const { tuning } = report(`${text} tune=10`, {
      pitches: {
        'c.wav': pitch(60, 3),
        'd.wav': pitch(50),
        'e.wav': pitch(65, -4),
        'f.wav': pitch(66, -10),
      },
    });
    expect(tuning.map(tuningCells)).toEqual([
      // Frequencies of equal temperament, A4 = 440 Hz (ISO 16): C4 261.63, D4 293.66, E4 329.63, F#4 369.99 Hz.
      ['60 (C4)', 1, 261.63, 262.08, 3, ''],
      ['62 (D4)', 1, 293.66, 146.83, -1200, 'an octave below'],
      ['64 (E4)', 1, 329.63, 348.42, 96, 'a semitone above'],
      ['66 (F#4)', 1, 369.99, 369.99, 0, ''],
    ]);
  });

  it('takes the median of a key, names the samples that are off and counts those without a sure pitch', () => {
    const layered = ['p', 'm', 'f', 'n']
      .map((name) => `<region> sample=dir/${name}.wav lokey=60 hikey=61 pitch_keycenter=60`)
      .join('\n');
    const { tuning } = report(layered, {
      pitches: {
        'dir/p.wav': pitch(60, 2),
        'dir/m.wav': pitch(60, 6),
        'dir/f.wav': pitch(72, 4),
        'dir/n.wav': pitch(31, 0, 0.3),
      },
    });
    expect(tuning.map(tuningCells)).toEqual([
      ['60 (C4)', 4, 261.63, 262.53, 6, 'f.wav: an octave above; 1 without a sure pitch'],
    ]);
  });

  it('is of distances in the words of musicians', () => {
    const expected: [number, string | undefined][] = [
      [49, undefined],
      [-49.9, undefined],
      [100, 'a semitone above'],
      [-115, 'a semitone below'],
      [700, '7 semitones above'],
      [1190, 'an octave above'],
      [-2400, '2 octaves below'],
      [50, '50 cents above'],
      [-150, '150 cents below'],
      [Number.NaN, undefined],
    ];
    for (const [cents, words] of expected) expect(pitchDistance(cents)).toBe(words);
  });
});

const anyCell = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.stringMatching(/^[=+\-@|"',;\r\n\t\\<>`*_[\]&#a1 ]{0,12}$/),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0),
  fc.constant(undefined),
);
const anyRow = fc.array(anyCell, { minLength: 3, maxLength: 3 });

describe('a report as comma-separated values', () => {
  it('reads back in another program, whatever the cells hold', () => {
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1 }), (cells) => {
        const text = csvTable(['a', 'b', 'c'], cells);
        const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' });
        expect(errors).toEqual([]);
        // RFC 4180, 2.2: the last record may end with a line break; after it the parser sees one empty field.
        expect(data.pop()).toEqual(['']);
        expect(data.slice(1)).toEqual(
          cells.map((row) =>
            row.map((cell) =>
              typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : String(cell ?? ''),
            ),
          ),
        );
      }),
    );
  });

  it('holds no formula (OWASP, CSV Injection)', () => {
    const text = csvTable(['a'], [['=1+1'], ['@SUM(A1)'], ['-2'], [-2], ['+x'], ['\tx']]);
    expect(text).toBe("a\r\n'=1+1\r\n'@SUM(A1)\r\n'-2\r\n-2\r\n'+x\r\n'\tx\r\n");
  });

  it('quotes as RFC 4180 says', () => {
    expect(csvTable(['a', 'b'], [['x,"y"', 'two\r\nlines']])).toBe('a,b\r\n"x,""y""","two\r\nlines"\r\n');
  });
});

describe('a report as Markdown', () => {
  const cellsIn = (html: string) =>
    [...html.matchAll(/<t[dh][^>]*>([\s\S]*?)<\/t[dh]>/g)].map(([, inner = '']) => inner);
  const decoded = (html: string) =>
    html.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');

  it('shows cells as they stand in another program, whatever they hold', () => {
    // Text of printable characters: control characters have no look that could be compared.
    const word = fc.stringMatching(/^[!-~ä€𝄞][ -~ä€𝄞]{0,14}[!-~ä€𝄞]$/u);
    fc.assert(
      fc.property(fc.array(fc.array(word, { minLength: 2, maxLength: 2 }), { minLength: 1 }), (words) => {
        const html = markdown.render(markdownTable(['one', 'two'], words));
        const shown = cellsIn(html).slice(2);
        for (const one of shown) expect(one).not.toContain('<');
        expect(shown.map(decoded)).toEqual(words.flat().map((cell) => cell.replace(/\s+/g, ' ')));
      }),
    );
  });

  it('has the tuning and a row for each sample', () => {
    const made = report('<region> sample=a|b.wav lokey=60 hikey=64 pitch_keycenter=60', {
      pitches: { 'a|b.wav': pitch(72) },
    });
    const html = markdown.render(markdownReport('Samples of a_b_c.sfz', made));
    expect(html).toContain('<h1>Samples of a_b_c.sfz</h1>');
    expect(cellsIn(html)).toEqual(expect.arrayContaining(['an octave above', 'a|b.wav', '60 (C4)']));
  });

  it('says so where there is nothing', () => {
    const text = markdownReport('Samples', report('<region> sample=*sine', {}));
    expect(text).toContain('No region plays a file.');
    expect(text).toContain('There is no measured pitch to compare with root keys.');
  });
});
