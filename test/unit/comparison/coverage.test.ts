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
      { numRuns: 25 },
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

// What one note does to the voices of another is heard by playing both (public documentation of the open SFZ format, off_by,
// off_mode, polyphony, note_polyphony).
describe('voices that end because of others', () => {
  const hats = (closed: string) =>
    `<global> sample=*saw ampeg_release=0.3\n<region> key=42 group=1 ${closed}\n<region> key=46 group=2`;
  const notes = (more: string) =>
    `<global> sample=*saw ampeg_release=1 ${more}\n<region> key=60\n<region> key=62`;

  it.each([
    ['off_by', hats('off_by=2'), hats('')],
    ['off_mode', hats('off_by=2'), hats('off_by=2 off_mode=normal')],
    ['polyphony', notes('polyphony=1'), notes('polyphony=3')],
    ['polyphony', notes('polyphony=2'), notes('polyphony=40')],
    ['note_polyphony', notes('note_polyphony=1'), notes('')],
    ['note_selfmask', notes('note_polyphony=1'), notes('note_polyphony=1 note_selfmask=off')],
    ['polyphony', notes('polyphony=1'), notes('').replaceAll('<region>', '<group> polyphony=1 <region>')],
  ])('are heard in a short phrase where %s differs', async (opcode, a, b) => {
    const { status, differences, unheard } = await compared(
      folderWith({ 'a.sfz': a, 'b.sfz': b }),
      'a.sfz',
      'b.sfz',
    );
    expect(status).toBe(1);
    expect(differences[0].cause).toMatchObject({ kind: 'condition', opcode });
    expect(differences[0]).toHaveProperty('followedBy');
    expect(unheard).toEqual([]);
  });

  it.each([
    // No phrase has so many strikes.
    ['polyphony', notes('polyphony=90'), notes('polyphony=100')],
    // The group that would be silenced is that of nobody else.
    ['off_by', hats('off_by=7'), hats('off_by=8')],
  ])('are told where %s differs and nothing is heard of it', async (opcode, a, b) => {
    const folder = folderWith({ 'a.sfz': a, 'b.sfz': b });
    const { status, equal, unheard } = await compared(folder, 'a.sfz', 'b.sfz');
    expect({ status, equal }).toEqual({ status: 0, equal: true });
    expect(unheard).toHaveLength(1);
    expect(unheard[0].cause).toMatchObject({ opcode, a: expect.anything(), b: expect.anything() });
  });

  it('are not told of groups that end nothing', async () => {
    const folder = folderWith({ 'a.sfz': hats(''), 'b.sfz': hats('').replace('group=1', 'group=9') });
    expect(await compared(folder, 'a.sfz', 'b.sfz')).toMatchObject({ equal: true, unheard: [] });
  });
});
