import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../../server/table/readTable';
import { table } from '../tableRegions';

const options = { rateOf: () => 1000, framesOf: () => 30_000 };
const notesOn = (text: string) => readZoneTable(text, options).notes.map(({ message }) => message);

describe('notes on positions', () => {
  it('show a time of the table with what it is read as, and what to write if that is wrong', () => {
    const text = table('File | Key | Loop start (s) | Loop end (s)', 'fen.wav | 50 | 2.125 | 7.875');
    expect(notesOn(text)).toContainEqual(
      expect.stringMatching(
        /^"2\.125" in column "Loop start \(s\)" is read as 2\.125 seconds, .* write it without the mark\.$/,
      ),
    );
  });

  it('give the frame that a length leads to, where it lies past the end', () => {
    const text = table('File | Key | Loop start | Loop length', 'fen.wav | 50 | 18000 | 15000');
    expect(notesOn(text)).toContainEqual(
      expect.stringMatching(
        /"15000" leads to frame 32999, which is past frame 29999, the last one of its sample\. .*Correct the number/,
      ),
    );
  });

  it('say that loop ends are percentages where they are', () => {
    const text = table('File | Key | Loop start (%) | Loop end (%)', 'fen.wav | 50 | 10 | 90');
    expect(notesOn(text).join('\n')).toMatch(
      /loop ends in column "Loop end \(%\)" are percentages, not frames/,
    );
  });
});
