import { describe, expect, it } from 'vitest';
import { renderedOpcodes } from '../../../../server/sound/program/renderedOpcodes';
import { play } from '../playing';
import type { Heard } from './ears';
import { samples } from './ears';
import { heardTable } from './heardTable';

/** What is heard of a region with some opcodes. */
function listen(heard: Heard, opcodes: string): number {
  const { base, before = '', seconds = 0.25, options = {}, hear, seeds = 1 } = heard;
  const text = `${before}\n<region> ${base} ${opcodes}`;
  const values = Array.from({ length: seeds }, (_, seed) =>
    hear(play(text, seconds, { samples, ...options, seed: seed + 1 })),
  );
  return Math.max(...values);
}

const table = heardTable();

describe('every opcode that the voice claims', () => {
  it('has a test that hears it', () => {
    const claimed = renderedOpcodes();
    expect(claimed.filter((pattern) => !Object.hasOwn(table, pattern))).toEqual([]);
    expect(Object.keys(table).filter((pattern) => !claimed.includes(pattern))).toEqual([]);
  });

  it.each(Object.entries(table))('%s', (_pattern, entry) => {
    for (const heard of Array.isArray(entry) ? (entry as Heard[]) : [entry as Heard]) {
      const shown = `${heard.base} | ${heard.opcode}`;
      const value = listen(heard, heard.opcode);
      expect(Math.abs(value - heard.is), `${shown}: ${value} is not ${heard.is}`).toBeLessThanOrEqual(
        heard.within,
      );
      const without = listen(heard, '');
      const distance = Number.isNaN(without) ? Number.POSITIVE_INFINITY : Math.abs(without - heard.is);
      expect(distance, `${shown}: without it the same is heard`).toBeGreaterThan(heard.within);
    }
  });
});
