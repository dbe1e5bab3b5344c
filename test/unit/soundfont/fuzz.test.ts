import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { sfzNotation } from '../../../server/sfz/notation';
import { fontsAmong, withFontSamples } from '../../../server/soundfont/fontFiles';
import { Generator as g } from '../../../server/soundfont/generators';
import { MemoryFiles } from '../workspace/memoryFiles';
import type { TestGenerator } from './fontBytes';
import { fontBytes, tone } from './fontBytes';

// Damaged fonts are refused with a reason, or read as far as they make sense: no exception, no wait, no memory to speak of.

const whole = fontBytes({
  version: [2, 4],
  presets: [
    {
      name: 'A',
      zones: [
        { gens: [[g.attenuation, 20]] },
        { gens: [[g.instrument, 0]] },
        {
          gens: [
            [g.velocityRange, [3, 90]],
            [g.instrument, 1],
          ],
        },
      ],
    },
    { name: 'B', bank: 128, zones: [{ gens: [[g.instrument, 1]] }] },
  ],
  instruments: [
    {
      name: 'I',
      zones: ([-500, 500] as const).map((pan, sample) => ({
        gens: [
          [g.pan, pan],
          [g.sampleModes, 1],
          [g.sample, sample],
        ] as TestGenerator[],
        mods: [[0x0502, 48, 500]] as [number, number, number][],
      })),
    },
    {
      name: 'J',
      zones: [
        { gens: [[g.filterCutoff, 5000]] },
        {
          gens: [
            [g.keyRange, [0, 60]],
            [g.sample, 2],
          ],
        },
      ],
    },
  ],
  samples: [
    { name: 'S L', frames: tone(60, 20), low: tone(60, 20), type: 4, link: 1 },
    { name: 'S R', frames: tone(60, 20), type: 2 },
    { name: 'T', frames: tone(80, 20) },
  ],
});

const place = fc.integer({ min: 0, max: whole.length - 1 });

/** Ways to damage a file. */
const damage = fc.oneof(
  fc.record({ kind: fc.constant('byte' as const), at: place, value: fc.integer({ min: 0, max: 255 }) }),
  fc.record({
    kind: fc.constant('word' as const),
    at: place,
    value: fc.constantFrom(0, 1, 0x7fff, 0x8000, 0xffff),
  }),
  fc.record({
    kind: fc.constant('double' as const),
    at: place,
    value: fc.constantFrom(0, 1, 0x7fffffff, 0x80000000, 0xffffffff),
  }),
  fc.record({ kind: fc.constant('cut' as const), at: place, value: fc.integer({ min: 1, max: 64 }) }),
  fc.record({ kind: fc.constant('end' as const), at: place, value: fc.constant(0) }),
  fc.record({ kind: fc.constant('twice' as const), at: place, value: fc.integer({ min: 1, max: 64 }) }),
);

function damaged(
  steps: readonly { kind: string; at: number; value: number }[],
  fixesSize: boolean,
): Uint8Array {
  let bytes = Uint8Array.from(whole);
  for (const { kind, at, value } of steps) {
    const view = new DataView(bytes.buffer);
    if (at + 4 > bytes.length) continue;
    if (kind === 'byte') bytes[at] = value;
    else if (kind === 'word') view.setUint16(at, value, true);
    else if (kind === 'double') view.setUint32(at, value, true);
    else if (kind === 'end') bytes = bytes.slice(0, at);
    else if (kind === 'cut') bytes = Uint8Array.from([...bytes.slice(0, at), ...bytes.slice(at + value)]);
    else bytes = Uint8Array.from([...bytes.slice(0, at), ...bytes.slice(at, at + value), ...bytes.slice(at)]);
  }
  // Past the check of the size, the lists behind it are reached more often.
  if (fixesSize && bytes.length >= 8) new DataView(bytes.buffer).setUint32(4, bytes.length - 8, true);
  return bytes;
}

/** Looks at everything in a font as the commands do; answers how far that went. */
async function lookAt(bytes: Uint8Array): Promise<'refused' | 'other' | 'read'> {
  const files = withFontSamples(new MemoryFiles({ '/a/any.sf2': bytes }));
  const found = await fontsAmong(files).at('/a/any.sf2');
  if (found.kind === 'unreadable') {
    expect(found.reason).toMatch(/^This SoundFont cannot be read: .+\.$/);
    return 'refused';
  }
  if (found.kind === 'other') return 'other';
  const { view } = found;
  for (const preset of view.presets) {
    const { text, notes } = view.text(preset, 'any.sf2', { samplePath: ({ name }) => name, attenuation: 1 });
    const instrument = sfzNotation.read(text, { path: '/a/any.sfz' });
    expect(instrument.findings).toEqual([]);
    for (const { start, end } of notes) expect(start <= end && end <= text.length).toBe(true);
  }
  for (const { name } of (await files.list('/a/any.sf2')) ?? []) {
    const reader = await files.open(`/a/any.sf2/${name}`);
    if (!reader) throw new Error(`${name} cannot be opened`);
    expect((await files.stat(`/a/any.sf2/${name}`))?.size).toBe(reader.size);
    expect((await reader.read(0, reader.size)).length).toBe(reader.size);
    expect((await readSampleFacts(reader)).kind).toBe('facts');
    await reader.close();
  }
  return 'read';
}

describe('damaged SoundFonts', () => {
  it('are refused with a reason, or read', async () => {
    expect(await lookAt(whole)).toBe('read');
    const ends = { refused: 0, other: 0, read: 0 };
    await fc.assert(
      fc.asyncProperty(
        fc.array(damage, { minLength: 1, maxLength: 4 }),
        fc.boolean(),
        async (steps, fixesSize) => {
          ends[await lookAt(damaged(steps, fixesSize))]++;
        },
      ),
      { numRuns: 600 },
    );
    // Both ends are reached often enough for this to mean something.
    expect(Math.min(ends.refused, ends.read)).toBeGreaterThan(50);
  });

  it('cost little, whatever their numbers promise', async () => {
    // 60,000 presets that all name one instrument of 60,000 zones would be 3.6 billion regions.
    const many = 3000;
    const zones = Array.from({ length: many }, () => ({ gens: [[g.sample, 0]] as TestGenerator[] }));
    const layers = Array.from({ length: many }, () => ({ gens: [[g.instrument, 0]] as TestGenerator[] }));
    const bytes = fontBytes({
      presets: [{ name: 'P', zones: layers }],
      instruments: [{ name: 'I', zones }],
      samples: [{ name: 'S', frames: tone(60, 20) }],
    });
    const found = await fontsAmong(withFontSamples(new MemoryFiles({ '/a.sf2': bytes }))).at('/a.sf2');
    expect(found).toEqual({
      kind: 'unreadable',
      reason: 'This SoundFont cannot be read: the preset "P" has more than 100000 regions.',
    });
  });

  it('are refused where zones meet by the billion and no region comes of it', async () => {
    const many = 5000;
    const keys = (low: number, high: number): TestGenerator => [g.keyRange, low | (high << 8)];
    const zones = Array.from({ length: many }, () => ({
      gens: [keys(1, 1), [g.sample, 0]] as TestGenerator[],
    }));
    const layers = Array.from({ length: many }, () => ({
      gens: [keys(0, 0), [g.instrument, 0]] as TestGenerator[],
    }));
    const bytes = fontBytes({
      presets: [{ name: 'P', zones: layers }],
      instruments: [{ name: 'I', zones }],
      samples: [{ name: 'S', frames: tone(60, 20) }],
    });
    const found = await fontsAmong(withFontSamples(new MemoryFiles({ '/a.sf2': bytes }))).at('/a.sf2');
    expect(found).toEqual({
      kind: 'unreadable',
      reason:
        'This SoundFont cannot be read: its presets name zones of instruments more than 20000000 times.',
    });
  });
});
