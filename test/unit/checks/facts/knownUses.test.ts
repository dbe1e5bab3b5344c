import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SampleUse, SampleUses } from '../../../../server/checks/facts/samples/sampleUse';
import { sampleUsesOf } from '../../../../server/checks/facts/samples/sampleUses';
import type { SampleLookup, SampleState } from '../../../../server/model/samples';
import { sfzNotation } from '../../../../server/sfz/notation';
import { readSfz } from '../../../../server/sfz/read';
import { wav } from '../markedText';

/** Samples in memory that say when their answers change, and count how often they are asked. */
class CountingSamples implements SampleLookup {
  version = 0;
  asked = 0;
  readonly #states = new Map<string, SampleState>();

  set(path: string, state: SampleState): void {
    this.#states.set(path, state);
    this.version++;
  }

  state(path: string): SampleState {
    this.asked++;
    return this.#states.get(path) ?? { kind: 'missing' };
  }

  nearest(): string[] {
    return [];
  }
}

function usesOf(text: string, samples: SampleLookup) {
  const instrument = readSfz(text, { path: 'test.sfz' });
  return sampleUsesOf({ instrument, samples, notation: sfzNotation });
}

/** Uses without the numbers of their paths, which go by what was used before. */
function withoutNumbers({ uses, doubtful, useOfRegion }: SampleUses) {
  const plain = ({ parameter, region, sample: { number: _, ...sample } }: SampleUse) => ({
    parameter,
    region,
    ...sample,
  });
  return { uses: uses.map(plain), doubtful: doubtful.map(plain), useOfRegion };
}

const lines = Array.from({ length: 100 }, (_, at) => `<region> sample=sound ${at}.wav volume=3`);

describe('samples of the check before', () => {
  it('are not looked up again, also behind a region that came, went or changed', () => {
    const samples = new CountingSamples();
    usesOf(lines.join('\n'), samples);
    expect(samples.asked).toBe(100);
    usesOf(lines.join('\n').replace('volume=3', 'volume=31'), samples);
    expect(samples.asked).toBe(100);
    usesOf(lines.toSpliced(50, 1).join('\n'), samples);
    expect(samples.asked).toBe(100);
    usesOf(lines.join('\n'), samples);
    expect(samples.asked).toBe(101);
    usesOf(lines.with(20, '<region> sample=other.wav').join('\n'), samples);
    expect(samples.asked).toBe(102);
  });

  it('share what they lead to, of which a text can have a million', () => {
    const { uses } = usesOf(['a.wav', 'b.wav', 'a.wav'].map((name) => `<region> sample=${name}`).join('\n'), {
      state: () => ({ kind: 'missing' }),
      nearest: () => [],
    });
    expect(uses[2]?.sample).toBe(uses[0]?.sample);
    expect(uses[1]?.sample).not.toBe(uses[0]?.sample);
    expect(uses.map(({ region }) => region)).toEqual([0, 1, 2]);
  });

  it('are looked up again once answers changed', () => {
    const samples = new CountingSamples();
    const [text] = lines;
    expect(usesOf(text, samples).uses[0]?.state.kind).toBe('missing');
    samples.set('sound 0.wav', wav());
    expect(usesOf(text, samples).uses[0]?.state.kind).toBe('file');
  });

  it('are numbered anew once many paths are used no more', () => {
    const samples = new CountingSamples();
    const before = usesOf(lines[0], samples).paths;
    expect(usesOf(lines[0], samples).paths).toBe(before);
    for (let at = 0; at < 1200; at++) usesOf(`<region> sample=typed ${at}.wav`, samples);
    expect(usesOf(lines[0], samples).paths.size).toBeLessThan(1100);
  });

  it('are asked for as long as they are pending', () => {
    const samples = new CountingSamples();
    samples.set('sound 0.wav', { kind: 'pending' });
    usesOf(lines[0], samples);
    usesOf(lines[0], samples);
    expect(samples.asked).toBe(2);
  });

  it('make the same uses as looking all up anew, whatever was changed in the text', () => {
    const value = fc.constantFrom('a.wav', 'b.wav', 'B.WAV', 'S\\a.wav', '*sine', '', '$x.wav', '/a.wav');
    const line = fc.oneof(
      { weight: 6, arbitrary: value.map((sample) => `<region> sample=${sample}`) },
      { weight: 2, arbitrary: fc.constantFrom('<region>', '<group>', '<global>') },
      { weight: 1, arbitrary: value.map((sample) => `<group> sample=${sample}`) },
      { weight: 1, arbitrary: fc.constantFrom('<control> default_path=S/', '<control>', '#define $x a') },
    );
    const change = fc.record({ at: fc.nat(20), taken: fc.nat(2), put: fc.array(line, { maxLength: 2 }) });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), fc.array(change, { maxLength: 8 }), (start, changes) => {
        const samples = new CountingSamples();
        samples.set('a.wav', wav());
        samples.set('S/a.wav', { kind: 'folder' });
        samples.set('B.WAV', { kind: 'otherCase', actual: 'b.wav' });
        let text = start;
        for (const { at, taken, put } of [{ at: 0, taken: 0, put: [] }, ...changes]) {
          text = text.toSpliced(at, taken, ...put);
          const anew: SampleLookup = { state: (path) => samples.state(path), nearest: () => [] };
          const remembered = usesOf(text.join('\n'), samples);
          expect(withoutNumbers(remembered)).toEqual(withoutNumbers(usesOf(text.join('\n'), anew)));
          for (const { path, number } of remembered.uses) expect(remembered.paths.get(path)).toBe(number);
          expect(new Set(remembered.paths.values()).size).toBe(remembered.paths.size);
        }
      }),
    );
  });
});
