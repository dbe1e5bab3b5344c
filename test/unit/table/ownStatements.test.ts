import { describe, expect, it } from 'vitest';
import { notesOf, regions } from './tableRegions';

const keys = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) =>
    [sample, lokey, hikey, pitch_keycenter].join(' '),
  );
const sheet = (over: string, headings: string, ...rows: string[]) =>
  `${over}\n${headings}\n${rows.join('\n')}\n`;

// C3, C4 and C5 for key 60 are all in use; which one holds is told by the line over each table.
describe('two tables that each say how they are to be read', () => {
  const named = (name: string, says: string, octave: number, root = 'Root') =>
    sheet(
      `${name} (${says})`,
      `File\tLow\tHigh\t${root}`,
      `${name}1.wav\tC${octave}\tE${octave}\tD${octave}`,
      `${name}2.wav\tF${octave}\tA${octave}\tG${octave}`,
    );
  const expected = ['up1.wav 48 52 50', 'up2.wav 53 57 55', 'down1.wav 36 40 38', 'down2.wav 41 45 43'];

  it.each([
    ['under the same headings', 'Root'],
    ['under headings of their own', 'Root key'],
  ])('are each read in their own octaves, %s', (_, root) => {
    const text = `${named('up', 'middle C = C3', 2)}\n${named('down', 'middle C = C4', 2, root)}`;
    expect(keys(text)).toEqual(expected);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/differ in how octaves are counted/);
    expect(notes).not.toMatch(/numbers a page/);
  });

  it('are read so where the line is a sentence, or stands below the headings', () => {
    const up = named('up', 'a', 2).replace('up (a)', 'Upper rank: middle C is C3.');
    const down = named('down', 'a', 2).replace(
      /down \(a\)\n(.*)\n/,
      '$1\nLower rank, where middle C is C4.\n',
    );
    expect(keys(`${up}\n${down}`)).toEqual(expected);
  });

  it('are read alike where one alone says it', () => {
    const text = `${named('up', 'middle C = C3', 2)}\n${named('down', 'sheet 2', 2)}`;
    expect(keys(text)).toEqual([...expected.slice(0, 2), 'down1.wav 48 52 50', 'down2.wav 53 57 55']);
    expect(notesOf(text).join('\n')).not.toMatch(/differ in/);
  });

  it('have their own scales of velocities', () => {
    const headings = 'File\tRoot\tVel low\tVel high';
    const text = `${sheet('Old bells, velocities 0-100', headings, 'o1.wav\t50\t0\t50', 'o2.wav\t50\t51\t100')}
${sheet('New bells, velocities 0-127', headings, 'n1.wav\t60\t0\t50', 'n2.wav\t60\t51\t100')}`;
    expect(regions(text).map(({ lovel, hivel }) => `${lovel}-${hivel}`)).toEqual([
      '0-64',
      '65-127',
      '0-50',
      '51-100',
    ]);
  });

  it('have their own ends of loops', () => {
    const headings = 'File\tRoot\tLoop start\tLoop end';
    const text = `${sheet('Old bells (loop end exclusive)', headings, 'o1.wav\t50\t100\t900', 'o2.wav\t55\t100\t800')}
${sheet('New bells (loop end inclusive)', headings, 'n1.wav\t60\t100\t900', 'n2.wav\t65\t100\t800')}`;
    expect(regions(text).map(({ loop_end }) => loop_end)).toEqual(['899', '799', '900', '800']);
  });

  it('count keys in their own ways', () => {
    const headings = 'File\tLow\tHigh\tRoot';
    const text = `${sheet('Old bells, keys count from 1 = lowest A of a piano', headings, 'o1.wav\t28\t32\t30', 'o2.wav\t33\t37\t35')}
${sheet('New bells, MIDI key numbers', headings, 'n1.wav\t36\t40\t38', 'n2.wav\t41\t45\t43')}`;
    expect(keys(text)).toEqual(['o1.wav 48 52 50', 'o2.wav 53 57 55', 'n1.wav 36 40 38', 'n2.wav 41 45 43']);
  });

  it('have their own units of levels', () => {
    const headings = 'File,Low,High,Root,Volume';
    const text = `${sheet('Old bells: volume as a factor (1 = full)', headings, 'o1.wav,48,52,50,0.5', 'o2.wav,53,57,55,1')}
${sheet('New bells: volume in dB', headings, 'n1.wav,36,40,38,-3', 'n2.wav,41,45,43,0')}`;
    expect(regions(text).map(({ volume }) => Number(volume ?? 0))).toEqual([-6.02, 0, -3, 0]);
  });
});

describe('a line over the second of two tables', () => {
  it('says the unit of its tunings, though the first gives another in its cells', () => {
    const headings = 'File\tRoot\tTune';
    const text = `${sheet('Front rank', headings, 'f1.wav\t50\t-9 ct', 'f2.wav\t55\t+7 ct', 'f3.wav\t60\t4 ct')}
${sheet('Rear rank, made by hand, and its tuning is in semitones.', headings, 'r1.wav\t70\t0.25', 'r2.wav\t75\t-0.10')}`;
    expect(regions(text).map(({ tune }) => tune)).toEqual(['-9', '7', '4', '25', '-10']);
  });
});
