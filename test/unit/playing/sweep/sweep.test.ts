import fc from 'fast-check';
import { parseMidi } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { playableInstrument } from '../../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../../server/playing/player/createPlayer';
import { playMessage } from '../../../../server/playing/player/playMessage';
import { sweepOf } from '../../../../server/playing/sweep/sweep';
import { sweepMidi } from '../../../../server/playing/sweep/sweepMidi';
import { readSfz } from '../../../../server/sfz/read';
import { readMidiPart } from '../../../../server/sound/render/midiPart';
import { text } from '../anyInstrument';

const times = { holdSeconds: 0.5, gapSeconds: 0.25 };

function playableOf(sfz: string) {
  return playableInstrument(readSfz(`<global> sample=*sine\n${sfz}`, { path: 'a.sfz' }));
}

/** The regions that a MIDI file starts in a fresh player. */
function heard(bytes: Uint8Array, playable: ReturnType<typeof playableOf>): Set<number> {
  const reading = readMidiPart(bytes);
  if (reading.kind !== 'part') throw new Error(reading.reason);
  const player = createPlayer(playable, { seed: 5 });
  const regions = new Set<number>();
  for (const { seconds, message } of reading.part) {
    for (const event of playMessage(player, message, seconds))
      if (event.kind === 'start') regions.add(event.region);
  }
  return regions;
}

// Note on, note off, controllers and program changes: MIDI 1.0; the file: Standard MIDI Files 1.0. The order of strikes is
// our choice.
describe('a sweep', () => {
  it('strikes a chromatic range one key after the other, at the times that were asked for', () => {
    const sweep = sweepOf(playableOf('<region> key=60\n<region> key=61\n<region> key=62 lovel=100'), times);
    expect(sweep).toMatchObject({ never: [], missed: [] });
    expect(sweep.strikes.map(({ key, velocity, regions }) => [key, velocity, regions])).toEqual([
      [60, 64, [0]],
      [61, 64, [1]],
      [62, 114, [2]],
    ]);
    const at = sweep.strikes.map(({ seconds }) => seconds);
    expect(at[1] - at[0]).toBeCloseTo(0.75, 9);
    expect(at[2] - at[1]).toBeCloseTo(0.75, 9);
    expect(sweep.lengthSeconds).toBeCloseTo(at[2] + 0.75, 9);
  });

  it('goes on with round robins and presses a keyswitch only where it changes', () => {
    const sweep = sweepOf(
      playableOf(`<global> sample=*sine sw_lokey=20 sw_hikey=21 key=60 seq_length=2
<region> sw_last=20
<region> sw_last=20 seq_position=2
<region> sw_last=21 sw_default=21
<region> sw_last=20 seq_length=1`),
      times,
    );
    const pressed = sweep.messages.flatMap(({ message }) => (message.kind === 'noteOn' ? [message.key] : []));
    expect(pressed).toEqual([60, 20, 60, 60]);
    expect(sweep.strikes.map(({ regions }) => regions)).toEqual([[2], [0, 3], [1]]);
  });

  it('tells what can never sound, and what MIDI cannot reach', () => {
    const sweep = sweepOf(
      playableOf('<region> end=-1\n<region> lohdcc1=0.501 hihdcc1=0.502\n<region>'),
      times,
    );
    expect(sweep.never).toMatchObject([{ region: 0, reason: 'off' }]);
    expect(sweep.missed).toEqual([1]);
    expect(sweep.strikes).toHaveLength(1);
  });

  it('sends the first values of all controllers that are looked at, and only changes from then on', () => {
    const sweep = sweepOf(
      playableOf('<region> locc20=9 key=60\n<region> locc20=9 key=61\n<region> hicc20=8 key=62'),
      times,
    );
    const moved = sweep.messages.flatMap(({ message }) =>
      message.kind === 'controller' ? [[message.number, message.value]] : [],
    );
    expect(moved).toEqual([
      [20, 9],
      [64, 0],
      [66, 0],
      [20, 0],
    ]);
  });

  it('uses channels and tempos where regions ask for them', () => {
    const playable = playableOf('<region> lochan=3 hichan=3\n<region> hibpm=100 lobpm=60');
    const sweep = sweepOf(playable, times);
    expect(sweep.missed).toEqual([]);
    const strikes = sweep.messages.filter(({ message }) => message.kind === 'noteOn');
    expect(strikes.map(({ channel }) => channel)).toEqual([3, 1]);
    const { header, tracks } = parseMidi(sweepMidi(sweep, 'Zwölf'));
    expect(header).toMatchObject({ format: 0, numTracks: 1, ticksPerBeat: 480 });
    const events = tracks.flat();
    expect(events[0]).toMatchObject({ type: 'trackName', text: 'Zw?lf' });
    expect(events.filter(({ type }) => type === 'setTempo')).toMatchObject([
      { microsecondsPerBeat: 500_000 },
      { microsecondsPerBeat: 750_000 },
    ]);
    expect(events.filter(({ type }) => type === 'marker')).toMatchObject([
      { text: 'C4 velocity 64: 1 region' },
      { text: 'C4 velocity 64: 1 region' },
    ]);
    const reading = readMidiPart(sweepMidi(sweep, 'a'));
    const times_ =
      reading.kind === 'part' ? reading.part.filter(({ message }) => message.kind === 'noteOn') : [];
    for (const [at, { seconds }] of times_.entries()) expect(seconds).toBeCloseTo(strikes[at].seconds, 2);
  });

  it('goes forward in time, starts each region that it claims, and the file does as well', () => {
    fc.assert(
      fc.property(text, (sfz) => {
        const playable = playableInstrument(readSfz(sfz, { path: 'a.sfz' }));
        const sweep = sweepOf(playable, { ...times, seed: 5 });
        const seconds = sweep.messages.map((message) => message.seconds);
        expect(seconds).toEqual([...seconds].sort((a, b) => a - b));
        const claimed = sweep.strikes.flatMap(({ regions }) => regions);
        expect(new Set(claimed).size).toBe(claimed.length);
        const others = [...sweep.never.map(({ region }) => region), ...sweep.missed];
        expect([...claimed, ...others].sort((a, b) => a - b)).toEqual([
          ...Array(playable.regionCount).keys(),
        ]);
        const regions = heard(sweepMidi(sweep, 'Sweep'), playable);
        for (const region of claimed) expect(regions.has(region)).toBe(true);
        for (const { region } of sweep.never) expect(regions.has(region)).toBe(false);
      }),
      { numRuns: 600 },
    );
  });
});
