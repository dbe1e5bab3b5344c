import { median } from '../../model/median';
import { byCount, counted } from '../../model/wording/counted';
import type { Shared } from './judgeNote';
import { centsBetween } from './judgeNote';
import { floorOf } from './levelTrack';
import type { Matched } from './matched';
import { isEnoughFound, notesBeyond } from './matched';

/** Something about a recording that makes what is said of it less sure. */
export interface RecordingDoubt {
  kind:
    | 'rate'
    | 'speed'
    | 'clipped'
    | 'noise'
    | 'cut'
    | 'missing'
    | 'order'
    | 'fit'
    | 'ringing'
    | 'tuning'
    | 'mono';
  message: string;
}

/** Below this rate brightness and clean pitches are lost (our choice). */
const leastRate = 16000;
/** How near noise may come to the notes, and what rings on to the note behind (our choice). */
const quietDb = 40;
const ringingDb = 20;
/** Clocks of sound cards differ by less than this (common practice: some 100 millionths at the most). */
const usualClockPpm = 500;
const heardCents = 5;
const otherNoteCents = 80;

/** What has to be said of a recording. */
export function recordingDoubts(matched: Matched, shared: Shared, isReordered: boolean): RecordingDoubt[] {
  const doubts: RecordingDoubt[] = [];
  const add = (kind: RecordingDoubt['kind'], message: string) => doubts.push({ kind, message });
  addOfSound(matched, add);
  addOfFit(matched, isReordered, add);
  const ppm = matched.alignment ? 1e6 * (matched.alignment.map.scale - 1) : 0;
  const speedCents = 1200 * Math.log2(1 / (1 + ppm / 1e6));
  if (Math.abs(ppm) > usualClockPpm)
    add(
      'speed',
      `It runs ${Math.abs(ppm / 1e4).toFixed(2)} % ${ppm > 0 ? 'slower' : 'faster'} than the notes were played${Math.abs(shared.pitchCents - speedCents) < 20 ? ', and its pitch says the same: its sample rate may be wrong' : ''}.`,
    );
  else if (Math.abs(shared.pitchCents) > heardCents)
    add(
      'tuning',
      `All of it is tuned ${shared.pitchCents.toFixed(1)} cents from the instrument. This is taken away before notes are compared.`,
    );
  return doubts;
}

type Add = (kind: RecordingDoubt['kind'], message: string) => void;

function addOfSound({ recording, survey, heard }: Matched, add: Add): void {
  const { sampleRate, channels } = recording;
  if (sampleRate < leastRate)
    add(
      'rate',
      `Its sample rate of ${sampleRate} Hz cannot hold the high frequencies that make sounds bright.`,
    );
  if (channels === 1) add('mono', 'It has one channel, so left and right are not compared.');
  if (survey.clippedRuns > 0)
    add(
      'clipped',
      `It is clipped in ${counted(survey.clippedRuns, 'place')}: levels and brightness of loud notes may be wrong. Record it again, quieter.`,
    );
  const levels = heard.flatMap((one) => (one ? [one.measures.levelDb] : []));
  const noise = floorOf(survey.track.levels());
  if (levels.length > 0 && median(levels) - noise < quietDb)
    add(
      'noise',
      `Noise is only ${Math.round(median(levels) - noise)} dB below the notes: quiet notes, releases and lengths may be wrong.`,
    );
  const ringing = heard.filter(
    (one) =>
      one && one.measures.levelDb - one.measures.beforeDb < ringingDb && one.measures.beforeDb > noise + 10,
  ).length;
  if (ringing > 0)
    add(
      'ringing',
      `${counted(ringing, 'note begins', 'notes begin')} while the one before still sounds. Record with a longer --gap.`,
    );
}

function addOfFit(matched: Matched, isReordered: boolean, add: Add): void {
  const { notes, heard } = matched;
  const found = heard.filter((one) => one !== undefined).length;
  if (isReordered) {
    add(
      'order',
      'Its notes are those of the MIDI file in another order. Record the MIDI file as it is, or give the one that was played with --notes.',
    );
    return;
  }
  const beyond = notesBeyond(matched);
  const isEnough = isEnoughFound(matched);
  if (!isEnough)
    add(
      'fit',
      `Only ${found} of ${counted(notes.length, 'note')} were found in it. It was not played from this MIDI file, or it is too noisy.`,
    );
  if (beyond > 0)
    add(
      'cut',
      `It ends before ${counted(beyond, 'note')} of the MIDI file; ${byCount(beyond, 'that one is', 'these are')} not compared.`,
    );
  const missing = notes.length - found - beyond;
  if (missing > 0 && isEnough) add('missing', `${counted(missing, 'note is', 'notes are')} not in it.`);
}

/** Whether many notes have pitches that others of them should have, which is what another order looks like. */
export function seemsReordered({ own, heard }: Matched): boolean {
  const cents = heard.map((one, at) => (one ? centsBetween(own[at], one.measures) : undefined));
  const known = cents.filter((one) => one !== undefined);
  if (known.length < 4) return false;
  const middle = median(known);
  const isOff = (one: number | undefined) => one !== undefined && Math.abs(one - middle) > otherNoteCents;
  const off = heard.flatMap((one, at) =>
    one && isOff(cents[at]) ? [{ at, hertz: one.measures.hertz }] : [],
  );
  if (off.length < 0.3 * known.length) return false;
  const belongs = off.filter(({ at, hertz }) =>
    off.some(
      ({ at: other }) =>
        other !== at &&
        hertz !== null &&
        own[other].hertz !== null &&
        Math.abs(1200 * Math.log2(hertz / (own[other].hertz as number))) < otherNoteCents / 2,
    ),
  );
  return belongs.length >= 0.7 * off.length;
}
