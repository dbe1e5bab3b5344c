import { describe, expect, it } from 'vitest';
import { pairSamples } from '../../corpus/comparison/pairSamples';
import type { Pair } from '../../corpus/comparison/pairs';
import { pairs } from '../../corpus/comparison/pairs';
import { folderWith } from '../commandLine/runInFolder';
import { compared } from './comparedTexts';

function folderOf({ a, b, otherBytes = {} }: Pair): string {
  const files: Record<string, string | Uint8Array> = { 'A/a.sfz': a, 'B/b.sfz': b };
  for (const [name, bytes] of Object.entries(pairSamples)) {
    if (!a.includes(name) && !b.includes(name)) continue;
    files[`A/${name}`] = bytes;
    files[`B/${name}`] = pairSamples[otherBytes[name] ?? name];
  }
  return folderWith(files);
}

// Pairs whose truth was written before the comparison's code was read.
describe('pairs with one fault', () => {
  it.each(pairs)('$name', async (pair) => {
    const { equal, differences } = await compared(folderOf(pair), 'A/a.sfz', 'B/b.sfz');
    if (!pair.truth) {
      expect(differences).toEqual([]);
      return;
    }
    expect(equal).toBe(false);
    const found = differences.map(({ cause }) => ({
      kind: cause.kind,
      a: cause.a?.line ?? null,
      b: cause.b?.line ?? null,
    }));
    const { says, ...truth } = pair.truth;
    // A sample that is another file may be named by what is heard of it.
    expect(found).toContainEqual(says ? { ...truth, kind: expect.any(String) } : truth);
    if (says) expect(differences[0].cause.message).toMatch(says);
  });
});
