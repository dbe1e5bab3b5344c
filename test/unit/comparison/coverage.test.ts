import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notesFor, regionsStarted } from '../../../server/comparison/startedRegions';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { coveringStrikes } from '../../../server/playing/sweep/coveringStrikes';
import { readSfz } from '../../../server/sfz/read';
import { pairSamples } from '../../corpus/comparison/pairSamples';
import { folderWith } from '../commandLine/runInFolder';
import { text } from '../playing/anyInstrument';
import { compared } from './comparedTexts';

const c4 = { 'c4.wav': pairSamples['c4.wav'] };

describe('the notes of a comparison', () => {
  it('start every region of either side that can sound, for any two instruments', () => {
    fc.assert(
      fc.property(text, text, (a, b) => {
        const sides = [a, b].map((sfz) => playableInstrument(readSfz(sfz, { path: 'a.sfz' })));
        const notes = notesFor(sides);
        for (const playable of sides) {
          const started = new Set(notes.flatMap((note) => regionsStarted(playable, note)));
          const never = new Set(coveringStrikes(playable).never.map(({ region }) => region));
          for (let region = 0; region < playable.regionCount; region++)
            expect(started.has(region) || never.has(region)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('find any instrument equal to itself', async () => {
    const [sfz] = fc.sample(text, { seed: 7, numRuns: 1 });
    expect(
      await compared(folderWith({ 'a.sfz': sfz, 'b.sfz': `// again\n${sfz}` }), 'a.sfz', 'b.sfz'),
    ).toMatchObject({
      equal: true,
      rendered: 0,
    });
  });

  // Differences that the usual note does not let be heard.
  it.each([
    ['key tracking, where the usual key is the root', 'lokey=55 hikey=65', 'pitch_keytrack=0', 'tuning'],
    ['a range of velocities that ends sooner', 'key=60', 'hivel=120', 'condition'],
    ['a range of a controller', 'key=60 locc20=0 hicc20=100', 'hicc20=60', 'condition'],
    ['what a controller moves', 'key=60', 'tune_oncc1=100', 'tuning'],
    ['what the pitch wheel moves', 'key=60', 'bend_up=400', 'tuning'],
    ['a sample that ends after a while', 'key=60 sample=c4.wav', 'end=52000', 'length'],
    ['a channel', 'key=60 lochan=2 hichan=4', 'hichan=3', 'condition'],
    ['a delay', 'key=60 delay=2', 'delay=2.5', 'offset'],
  ])('tell %s apart', async (_, opcodes, more, kind) => {
    const region = `<region> sample=*saw pitch_keycenter=60 ${opcodes}`;
    const folder = folderWith({ 'a.sfz': region, 'b.sfz': `${region} ${more}`, ...c4 });
    const { differences } = await compared(folder, 'a.sfz', 'b.sfz');
    expect(differences.map(({ cause }) => cause.kind)).toContain(kind);
    expect(differences[0].cause).toMatchObject({ b: { line: 1 } });
  });
});
