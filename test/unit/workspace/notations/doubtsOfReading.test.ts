import { describe, expect, it } from 'vitest';
import { finish } from '../../../../server/model/steps';
import { readZoneTable } from '../../../../server/table/readTable';
import { doubtsOfReading } from '../../../../server/workspace/notations/doubtsOfReading';
import { readTableWithSamples } from '../../../../server/workspace/readTableWithSamples';
import { MemoryFiles } from '../memoryFiles';

const doubts = (text: string) =>
  finish(doubtsOfReading(readZoneTable(text).instrument)).map(({ message, start, end }) => ({
    message,
    at: text.slice(start, end),
  }));

describe('doubts of what was read', () => {
  it.each([
    [
      'keys that two rows share in part',
      'sample\tlow\thigh\troot\na.wav\t40\t45\t42\nb.wav\t44\t50\t47\n',
      /"b\.wav" and "a\.wav" \(line 2\) both sound on keys 44 \(G#2\) to 45 \(A2\)/,
    ],
    [
      'velocities that no row plays',
      'sample\tkeys\troot\tvel\na.wav\t40-45\t42\t1-60\nb.wav\t40-45\t42\t64-127\n',
      /No region plays velocities 61 to 63/,
    ],
    [
      'a turn that is missing',
      [
        'sample\tkey\tround robin',
        ...[1, 2, 3, 4].map((at) => `a${at}.wav\t38\t${at}`),
        ...[1, 2, 4].map((at) => `b${at}.wav\t40\t${at}`),
      ].join('\n'),
      /step 3 of 4 on key 40/,
    ],
    [
      'a key switch among the keys that are played',
      'sample\tlow\thigh\troot\tkey switch\na.wav\t40\t60\t50\t24\nb.wav\t40\t60\t50\t52\n',
      /Key switch 52 \(E3\) stands among the keys that are played/,
    ],
  ])('tell of %s', (_, text, message) => {
    const told = doubts(text);
    expect(told).toHaveLength(1);
    expect(told[0].message).toMatch(message);
    expect(told[0].at).not.toBe('');
  });

  it.each([
    [
      'layers, turns and switches that fit',
      'sample\tlow\thigh\troot\tvel\tkey switch\na.wav\t40\t60\t50\t1-60\t24\nb.wav\t40\t60\t50\t61-127\t24\nc.wav\t40\t60\t50\t1-127\t25\n',
    ],
    [
      'one sample over all keys',
      'sample\tlow\thigh\troot\tkey switch\na.wav\t0\t127\t50\t24\nb.wav\t0\t127\t50\t25\n',
    ],
  ])('say nothing of %s', (_, text) => {
    expect(doubts(text)).toEqual([]);
  });

  it('tell the first of many, and how many there are', () => {
    const row = (at: number) => `s${at}.wav\t${20 + at * 5}\t${26 + at * 5}\t${22 + at * 5}`;
    const text = ['sample\tlow\thigh\troot', ...Array.from({ length: 12 }, (_, at) => row(at))].join('\n');
    const told = doubts(text);
    expect(told).toHaveLength(6);
    expect(told[5].message).toMatch(/5 more like this\.$/);
  });

  it('stand among the notes of a table', async () => {
    const text = 'sample\tlow\thigh\troot\na.wav\t40\t45\t42\nb.wav\t44\t50\t47\n';
    const folders = { path: '/t/a.txt', samplesFolder: '/t', outputFolder: '/t' };
    const { notes } = await readTableWithSamples(new MemoryFiles({ '/t/a.txt': text }), text, folders);
    expect(notes.map(({ message }) => message).join('\n')).toMatch(/both sound on keys 44/);
  });
});
