import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import type { PlayableInstrument } from '../../../server/playing/playable/playableInstrument';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import { readSfz } from '../../../server/sfz/read';
import { compare, quantile } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

const notes = 2000;

/** What a struck key costs among 10,000 regions, and what making them playable costs. */
export async function measurePlaying(add: AddRow): Promise<void> {
  const text = largeInstrument(10_000, 'region-per-line');
  const instrument = readSfz(text, { path: '/a.sfz' });
  const playable = playableInstrument(instrument);
  const played = await compare(
    () => playNotes(playable),
    () => lookAtAll(playable),
  );
  add({
    ...ratioRow(`${notes} notes in 10,000 regions, to looking at the keys of all regions`, played, '< 1'),
    remark: `${((played.firstMs / notes) * 1000).toFixed(1)} µs to ${((played.secondMs / notes) * 1000).toFixed(1)} µs a note`,
  });
  const slowest = quantile(noteTimes(playable), 0.99);
  add({
    what: 'A note in 10,000 regions, 99 of 100',
    result: `${(slowest * 1000).toFixed(1)} µs`,
    aim: '≤ 50 µs',
    remark: '',
  });
  for (const [what, conditions] of onOneKey) {
    const text = Array.from({ length: 10_000 }, (_, at) => `<region> sample=a.wav key=60 ${conditions(at)}`);
    const one = playableInstrument(readSfz(text.join('\n'), { path: '/a.sfz' }));
    add({
      what: `A note where 10,000 regions on its key are parted by ${what}`,
      result: `${(quantile(noteTimes(one, () => ({ key: 60, velocity: 100 }))) * 1000).toFixed(1)} µs`,
      aim: '≤ 50 µs',
      remark: '',
    });
  }
  const made = await compare(
    () => playableInstrument(instrument),
    () => readSfz(text, { path: '/a.sfz' }),
  );
  add(ratioRow('Making 10,000 regions playable, to reading', made, 'near 1'));
}

/** What parts regions of one key, so that few of them answer a note. */
const onOneKey: readonly (readonly [what: string, conditions: (at: number) => string])[] = [
  ['velocity', (at) => `lovel=${1 + (at % 127)} hivel=${1 + (at % 127)}`],
  ['chance', (at) => `lorand=${at / 10_000} hirand=${(at + 1) / 10_000}`],
  ['round robins', (at) => `seq_length=100 seq_position=${1 + (at % 100)} lovel=${1 + (at % 127)}`],
  ['keyswitches', (at) => `sw_lokey=0 sw_hikey=48 sw_last=${at % 48} sw_default=0 lovel=${1 + (at % 127)}`],
  ['controllers', (at) => `locc1=${at % 128} hicc1=${at % 128} locc2=${at % 100} hicc2=${at % 100}`],
];

/** Keys, velocities and keyswitches that are much the same each time. */
function note(at: number): { key: number; velocity: number } {
  return { key: 24 + ((at * 37) % 84), velocity: 1 + ((at * 53) % 127) };
}

function playNotes(playable: PlayableInstrument): void {
  const player = createPlayer(playable, { seed: 1 });
  let started = 0;
  for (let at = 0; at < notes; at++) {
    const { key, velocity } = note(at);
    if (at % 50 === 0) player.noteOn((at / 50) % 17, 100, at);
    for (const event of player.noteOn(key, velocity, at)) {
      if (event.kind !== 'start') continue;
      started++;
      player.voiceEnded(event.voice);
    }
    player.noteOff(key, 0, at);
  }
  if (started < notes / 2) throw new Error('Most notes should sound.');
}

function noteTimes(playable: PlayableInstrument, noteAt = note): number[] {
  const player = createPlayer(playable, { seed: 1 });
  player.noteOn(3, 100, 0);
  const times: number[] = [];
  for (let at = 0; at < 10 * notes; at++) {
    const { key, velocity } = noteAt(at);
    const start = performance.now();
    const events = player.noteOn(key, velocity, at);
    times.push(performance.now() - start);
    for (const event of events) if (event.kind === 'start') player.voiceEnded(event.voice);
    player.noteOff(key, 0, at);
  }
  return times.slice(notes);
}

/** The least that a player without an index does. */
function lookAtAll({ lowKey, highKey, lowVelocity, highVelocity, regionCount }: PlayableInstrument): void {
  let found = 0;
  for (let at = 0; at < notes; at++) {
    const { key, velocity } = note(at);
    for (let region = 0; region < regionCount; region++) {
      if (key < lowKey[region] || key > highKey[region]) continue;
      if (velocity >= lowVelocity[region] && velocity <= highVelocity[region]) found++;
    }
  }
  if (found === 0) throw new Error('Regions should answer.');
}
