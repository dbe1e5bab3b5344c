import { rangeOverlap } from '../../../server/checks/rules/rangeOverlap';
import { sfzNotation } from '../../../server/sfz/notation';
import { readSfz } from '../../../server/sfz/read';
import { quantile, times } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { milliseconds } from '../table';

/** The check for overlaps on 10,000 and on 100,000 regions, and how its time grows. */
export async function measureOverlaps(add: AddRow): Promise<void> {
  const small = await overlapMs(10_000);
  const large = await overlapMs(100_000);
  add({ what: 'Overlap check, 10,000 regions', result: milliseconds(small), aim: '', remark: '' });
  add({ what: 'Overlap check, 100,000 regions', result: milliseconds(large), aim: '', remark: '' });
  add({
    what: 'Growth of its time for 10 times the regions',
    result: `× ${(large / small).toFixed(1)}`,
    aim: 'near 10',
    remark: '',
  });
}

async function overlapMs(regions: number): Promise<number> {
  const text = largeInstrument(regions, 'region-per-line');
  const samples = { state: () => ({ kind: 'pending' }) as const, nearest: () => [] };
  const check = () => {
    let found = 0;
    // Each round has an instrument of its own, since what was worked out for one is remembered.
    const steps = rangeOverlap.check(
      { instrument: instruments.pop()!, notation: sfzNotation, samples },
      () => found++,
    );
    while (steps && !steps.next().done);
    if (found > 0) throw new Error('The large instrument should hold no overlap.');
  };
  const [warmUp, rounds] = regions > 50_000 ? [2, 9] : [8, 31];
  const instruments = Array.from({ length: warmUp + rounds }, () => readSfz(text, { path: '/a.sfz' }));
  return quantile(await times(check, { warmUp, rounds }));
}
