import { describe, expect, it } from 'vitest';
import type { FromVoice } from '../../../client/audition/voiceMessages';
import { Audition } from '../../../client/audition/worklet/audition';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { packed, unpacked } from '../../../server/protocol/conversion/packedData';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { pageFrames } from '../../../server/sound/voice/voiceSamples';

const rate = 48000;

/** An audition with an instrument that went through the protocol, and what it has told. */
function auditionOf(text: string, mostBytes = 1e8) {
  const told: FromVoice[] = [];
  const audition = new Audition(rate, mostBytes, (message) => told.push(message));
  const give = (next: string) => {
    const instrument = readSfz(next, { path: 'a.sfz' });
    const samples = {
      state: () => ({
        kind: 'file',
        facts: {
          container: 'wav',
          encoding: 'pcm',
          sampleRate: rate,
          channels: 1,
          frames: rate,
          loops: [],
          rootKey: null,
        },
      }),
    } as never;
    const made = {
      playable: playableInstrument(instrument, { samples }),
      program: soundOf(instrument, { samples }),
    };
    const sent = unpacked(JSON.parse(JSON.stringify(packed(made)))) as typeof made;
    audition.take({ type: 'instrument', ...sent });
  };
  give(text);
  const play = (seconds: number) => {
    const frames = Math.ceil((seconds * rate) / 128) * 128;
    const left = new Float32Array(frames);
    const right = new Float32Array(frames);
    for (let at = 0; at < frames; at += 128)
      audition.process(left.subarray(at, at + 128), right.subarray(at, at + 128));
    return { left, right };
  };
  const last = <Type extends FromVoice['type']>(type: Type) =>
    told.filter((one) => one.type === type).at(-1) as Extract<FromVoice, { type: Type }> | undefined;
  return { audition, give, play, told, last };
}

const peak = (values: Float32Array) => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const crossings = (values: Float32Array) => {
  let count = 0;
  for (let at = 1; at < values.length; at++) if (values[at - 1] < 0 && values[at] >= 0) count++;
  return count;
};

describe('what plays on the audio thread', () => {
  it('is silent until a key goes down, then sounds at the pitch of the key and 12 dB below full scale or less', () => {
    const { audition, play, last } = auditionOf('<region> sample=*sine');
    expect(peak(play(0.1).left)).toBe(0);
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 69, velocity: 127 } });
    const { left } = play(1);
    // A4 = 440 Hz (ISO 16:1975); −12 dB is 0.251 (10^(−12/20)).
    expect(crossings(left)).toBeGreaterThan(435);
    expect(crossings(left)).toBeLessThan(442);
    expect(peak(left)).toBeGreaterThan(0.05);
    expect(peak(left)).toBeLessThanOrEqual(0.2512);
    expect(last('sounding')).toMatchObject({ regions: [0], keys: [69] });
  });

  it('stays under full scale whatever the text asks for', () => {
    const { audition, play } = auditionOf('<region> sample=*noise volume=60 amp_veltrack=0');
    audition.take({ type: 'level', db: 0 });
    for (let key = 40; key < 60; key++)
      audition.take({ type: 'message', message: { kind: 'noteOn', key, velocity: 127 } });
    const { left, right } = play(1);
    expect(peak(left)).toBeGreaterThan(0.3);
    expect(Math.max(peak(left), peak(right))).toBeLessThanOrEqual(10 ** (-1 / 20));
  });

  it('ends all by one message, and a key by letting it go', () => {
    const { audition, play, last } = auditionOf('<region> sample=*sine ampeg_release=0.05');
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 100 } });
    play(0.2);
    audition.take({ type: 'message', message: { kind: 'noteOff', key: 60, velocity: 64 } });
    play(0.3);
    expect(last('sounding')).toMatchObject({ regions: [] });
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 100 } });
    play(0.2);
    audition.take({ type: 'stop' });
    // What is below 5 Hz dies away in 32 ms; a tenth of a thousandth is 80 dB below full scale.
    play(0.2);
    expect(peak(play(0.1).left)).toBeLessThan(1e-4);
    expect(last('sounding')).toMatchObject({ regions: [], keys: [] });
  });

  it('goes on with held notes when the text changes, without a jump, and plays new ones by the new text', () => {
    const { audition, give, play } = auditionOf('<region> sample=*sine amp_veltrack=0');
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 100 } });
    const before = play(0.2).left;
    give('<region> sample=*sine amp_veltrack=0 transpose=12');
    const { left } = play(0.2);
    // A sine of middle C at −12 dB moves by 2π·261.6/48000·0.251 a frame at the most.
    const steepest = (2 * Math.PI * 261.63 * 0.2512) / rate;
    const jump = Math.abs(left[0] - (before.at(-1) ?? 0));
    expect(jump).toBeLessThan(1.1 * steepest);
    audition.take({ type: 'message', message: { kind: 'noteOff', key: 60, velocity: 64 } });
    play(0.2);
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 100 } });
    play(0.1);
    expect(crossings(play(1).left)).toBeGreaterThan(515);
  });

  it('asks for audio once, plays it when it comes, and keeps it for the next text', () => {
    const { audition, give, play, told } = auditionOf('<region> sample=a.wav amp_veltrack=0');
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 100 } });
    play(0.1);
    const wanted = () => told.filter(({ type }) => type === 'want');
    expect(wanted()).toMatchObject([{ sample: 'a.wav', startFrame: 0 }]);
    const channels = [new Float32Array(rate).fill(0.5)];
    audition.take({ type: 'audio', sample: 'a.wav', rate, totalFrames: rate, startFrame: 0, channels });
    expect(peak(play(0.1).left)).toBeGreaterThan(0.03);
    give('<region> sample=a.wav amp_veltrack=0 volume=-3');
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 62, velocity: 100 } });
    play(0.1);
    expect(wanted()).toHaveLength(1);
  });

  it('says which regions a note would start, and why others stay silent', () => {
    const { audition, last } = auditionOf(
      '<region> sample=*sine hivel=63 <region> sample=*sine lovel=64 <region> sample=*sine locc4=100',
    );
    audition.take({ type: 'look', key: 60, velocity: 100 });
    const looked = last('looked');
    expect(looked?.sounds).toEqual([1]);
    expect(looked?.silent.map(({ reason, count }) => [reason, count])).toEqual([
      ['velocity', 1],
      ['controller', 1],
    ]);
    audition.take({ type: 'message', message: { kind: 'controller', number: 4, value: 127 } });
    audition.take({ type: 'look', key: 60, velocity: 100 });
    expect(last('looked')?.sounds).toEqual([1, 2]);
  });

  it('keeps bend, pressure and controllers where they are when the text changes', () => {
    const { audition, give, play } = auditionOf('<region> sample=*sine pitch_keycenter=69 amp_veltrack=0');
    audition.take({ type: 'message', message: { kind: 'bend', value: 8191 } });
    give('<region> sample=*sine pitch_keycenter=69 amp_veltrack=0 bend_up=1200');
    audition.take({ type: 'message', message: { kind: 'noteOn', key: 69, velocity: 127 } });
    play(0.1);
    // An octave above 440 Hz (ISO 16): 2 crossings of zero a period.
    const { left } = play(0.5);
    const crossings = left.reduce((sum, value, at) => sum + (at > 0 && value * left[at - 1]! < 0 ? 1 : 0), 0);
    expect(crossings).toBeGreaterThan(870);
    expect(crossings).toBeLessThan(890);
  });

  it('asks again for a sample whose file is another one', () => {
    const { audition, give, play, told } = auditionOf('<region> sample=a.wav amp_veltrack=0');
    const audio = (value: number) => ({
      type: 'audio' as const,
      sample: 'a.wav',
      rate,
      totalFrames: rate,
      startFrame: 0,
      channels: [new Float32Array(rate).fill(value)],
    });
    const strike = () => {
      audition.take({ type: 'message', message: { kind: 'noteOn', key: 60, velocity: 127 } });
      return play(0.1);
    };
    strike();
    audition.take(audio(0.5));
    expect(peak(play(0.1).left)).toBeGreaterThan(0.03);
    audition.take({ type: 'stop' });
    play(0.2);
    audition.take({ type: 'forget', sample: 'a.wav' });
    give('<region> sample=a.wav amp_veltrack=0');
    strike();
    expect(told.filter(({ type }) => type === 'want')).toHaveLength(2);
    audition.take(audio(0));
    // What stands against a constant offset has not quite settled.
    expect(peak(play(0.1).left)).toBeLessThan(1e-4);
  });

  it('forgets what long notes have played where there is too much, not what they come to, and asks again for what a new note needs', () => {
    const totalFrames = 12 * pageFrames;
    const long = 'amp_veltrack=0 loop_mode=one_shot';
    const { audition, play, told } = auditionOf(
      `<region> sample=a.wav key=60 ${long} <region> sample=b.wav key=61 ${long}`,
      2.5e6,
    );
    let given = 0;
    const giveWanted = () => {
      for (const one of told.filter((message) => message.type === 'want').slice(given)) {
        given++;
        const { sample, startFrame, frames } = one;
        const channels = [new Float32Array(Math.min(frames, totalFrames - startFrame)).fill(0.5)];
        audition.take({ type: 'audio', sample, rate, totalFrames, startFrame, channels });
      }
    };
    const strike = (key: number) =>
      audition.take({ type: 'message', message: { kind: 'noteOn', key, velocity: 127 } });
    const playFor = (seconds: number) => {
      for (let done = 0; done < seconds; done += 0.1) {
        play(0.1);
        giveWanted();
      }
    };
    strike(60);
    strike(61);
    playFor(16);
    const wanted = () => told.filter((message) => message.type === 'want');
    const pages = [0, 4, 5, 6, 7, 8, 9, 10, 11].map((page) => page * pageFrames);
    for (const name of ['a.wav', 'b.wav'])
      expect(wanted().flatMap(({ sample, startFrame }) => (sample === name ? [startFrame] : []))).toEqual(
        pages,
      );
    // Two samples of 12 pages of 65,536 single floats take 6.3 MB; 2.5 are less than what their beginnings and next two seconds take.
    playFor(1);
    const before = wanted().length;
    strike(60);
    playFor(6);
    expect(wanted().at(before)).toMatchObject({ sample: 'a.wav', startFrame: 4 * pageFrames });
  });
});
