import { describe, expect, it } from 'vitest';
import { openZoneTableInSteps, readZoneTable } from '../../../server/table/readTable';
import { takeSteps } from '../../../server/workspace/takeSteps';

const text = `Sample\tRoot\tLow\tHigh\n${Array.from({ length: 20_000 }, (_, row) => `${row}.wav\t60\t0\t127`).join('\n')}`;

describe('a long table in steps', () => {
  it('gives what reading at once gives, and tells a share that rises to 1', async () => {
    const shares: number[] = [];
    const table = await takeSteps(openZoneTableInSteps(text), (share) => shares.push(share));
    const opened = shares.length;
    const { instrument } = await takeSteps(table.readInSteps(), (share) => shares.push(1 + share));
    expect(instrument.regions).toHaveLength(20_000);
    expect(instrument.parameters).toEqual(readZoneTable(text).instrument.parameters);
    expect(opened).toBeGreaterThan(1);
    expect(shares.length).toBeGreaterThan(opened + 5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.every((share) => share > 0 && share <= 2)).toBe(true);
  });

  it('lets other work run in between', async () => {
    let ran = false;
    setTimeout(() => {
      ran = true;
    }, 0);
    function* long(): Generator<number, boolean> {
      for (let step = 0; !ran && step < 1e9; step++) yield step / 1e9;
      return ran;
    }
    expect(await takeSteps(long())).toBe(true);
  });

  it('ends where its watcher throws', async () => {
    let steps = 0;
    const stopped = takeSteps(openZoneTableInSteps(text), () => {
      if (++steps === 2) throw new Error('stopped');
    });
    await expect(stopped).rejects.toThrow('stopped');
    expect(steps).toBe(2);
  });
});
