import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { doubtfulBelow } from '../../../../server/vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { unreadValues } from '../../../../server/vocabulary/read/unreadValues';
import type { KnownRegion, Style } from './randomVocabulary';
import { instruments, render, styles } from './randomVocabulary';

/** What a note has to speak of so that it tells of a parameter. */
const about: Readonly<Record<string, RegExp>> = {
  sample: /sample|file|folder|path/i,
  lokey: /key|note/i,
  hikey: /key|note/i,
  pitch_keycenter: /key|note|root/i,
  lovel: /velocit/i,
  hivel: /velocit/i,
  volume: /level|volume|gain/i,
  pan: /pan|balance/i,
  tune: /tun|pitch|cents|semitones/i,
  loop_start: /loop/i,
  loop_end: /loop/i,
  trigger: /start|trigger|release/i,
};
const names: Readonly<Record<string, keyof Style['names']>> = {
  sample: 'sample',
  lokey: 'low',
  hikey: 'high',
  pitch_keycenter: 'root',
  lovel: 'soft',
  hivel: 'loud',
  volume: 'level',
  pan: 'pan',
  tune: 'tune',
  loop_start: 'loopStart',
  loop_end: 'loopEnd',
  trigger: 'trigger',
};
const defaults: Readonly<Record<string, number | string>> = { volume: 0, pan: 0, tune: 0, trigger: 'attack' };
const tolerance: Readonly<Record<string, number>> = {
  volume: 0.01,
  tune: 0.01,
  lovel: 0,
  hivel: 0,
  pan: 0.01,
};

/** The values of an instrument that come out wrong without a note, when it is written in a vocabulary and that is worked out. */
function silentlyWrong(regions: readonly KnownRegion[], style: Style): string[] | undefined {
  const text = render(regions, style);
  const inferred = inferVocabulary(text, { path: 'a.xml' });
  if (!inferred) return undefined;
  const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: 'a.xml' });
  const notes = [
    ...inferred.decisions
      .filter(({ confidence, isGuess }) => isGuess || confidence < doubtfulBelow)
      .map(({ message, evidence }) => [message, ...evidence].join(' ')),
    ...unreadValues(instrument, inferred.vocabulary).map(({ message }) => message),
    ...instrument.findings.map(({ message }) => message),
  ];
  const isTold = (name: string) =>
    notes.some((note) => about[name].test(note) || note.includes(style.names[names[name]]));
  const wanted = regions.filter(({ isOff }) => !isOff);
  const isOffTold = notes.some((note) => note.includes(style.off[0]));
  if (instrument.regions.length !== wanted.length) {
    if (isOffTold && instrument.regions.length === regions.length) return [];
    return [`${instrument.regions.length} regions instead of ${wanted.length}`];
  }
  return wanted.flatMap((one, at) => {
    const read = effectiveValues(instrument, instrument.regions[at]);
    const { loop, isOff: _, sample, ...rest } = one;
    const truth: Record<string, number | string | undefined> = {
      ...rest,
      sample: `Recordings/Take 2/${sample}`,
      loop_start: loop?.[0],
      loop_end: loop?.[1],
    };
    return Object.entries(truth).flatMap(([name, value]) => {
      const found = read[name] ?? defaults[name];
      const isSame =
        typeof value === 'number' && typeof found === 'number'
          ? Math.abs(value - found) <= (tolerance[name] ?? 0)
          : value === found;
      return isSame || isTold(name) ? [] : [`${name} ${value} is ${found}`];
    });
  });
}

describe('an instrument in a vocabulary that nobody has seen', () => {
  it('comes out as it was, or with a note on what is not sure', () => {
    let refused = 0;
    let all = 0;
    fc.assert(
      fc.property(instruments, styles, (regions, style) => {
        fc.pre(regions.some(({ isOff }) => !isOff));
        const wrong = silentlyWrong(regions, style);
        all++;
        if (!wrong) refused++;
        else expect(wrong).toEqual([]);
      }),
      { numRuns: 80 },
    );
    expect(refused / all).toBeLessThan(0.15);
  });
});
