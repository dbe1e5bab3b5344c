import { mostMeasuredChannels } from '../../audio/measure/openMeasured';
import { noteNameOf } from '../../model/keys';
import type { LoopSeam, MeasuredPitch, SampleFacts, SampleSurvey } from '../../model/samples';
import { visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';

/** What was asked to be measured in a sample. */
export interface AskedMeasures {
  pitch: boolean;
  /** The survey, and the seams of the loops that the file names. */
  all: boolean;
}

/** What is known of a sample file. */
export interface ListedSample {
  /** As output shows it. */
  path: string;
  facts: SampleFacts;
  pitch: MeasuredPitch | null;
  survey: SampleSurvey | null;
  /** In the order of the loops. */
  seams: readonly (LoopSeam | null)[];
}

/** A sample in lines for people. */
export function sampleText(
  { path, facts, pitch, survey, seams }: ListedSample,
  asked: AskedMeasures,
): string {
  const lines = [
    `${path}`,
    `  ${encodingText(facts)}, ${facts.sampleRate} Hz, ${channelText(facts.channels)}`,
    `  ${facts.frames} frames, ${facts.lengthSeconds.toFixed(3)} s`,
    ...facts.loops.map((loop, at) => {
      const seam = asked.all ? seamText(seams[at] ?? null) : '';
      return `  loop ${loop.type}, frames ${loop.start} to ${loop.end}${seam}`;
    }),
  ];
  if (facts.rootKey !== null) {
    const tune = facts.fineTuneCents
      ? `, ${facts.fineTuneCents > 0 ? '+' : ''}${facts.fineTuneCents} cents`
      : '';
    lines.push(`  root key ${facts.rootKey} (${noteNameOf(facts.rootKey)})${tune}`);
  }
  if (asked.pitch) lines.push(pitchText(pitch));
  if (asked.all) lines.push(...surveyLines(survey, facts));
  for (const problem of facts.problems) lines.push(`  note: ${problem.message}`);
  return `${lines.map(visibleText).join('\n')}\n`;
}

/** Container, encoding and depth, as far as they say something. */
function encodingText({ container, encoding, bitsPerSample }: SampleFacts): string {
  const parts: string[] = [container];
  if (encoding !== container) parts.push(encoding);
  if (bitsPerSample > 0) parts.push(`${bitsPerSample} bit`);
  return parts.join(', ');
}

function channelText(channels: number): string {
  return channels === 1 ? 'mono' : channels === 2 ? 'stereo' : `${channels} channels`;
}

function seamText(seam: LoopSeam | null): string {
  if (!seam) return ', its seam cannot be measured';
  if (!seam.isAudible) return ', closes smoothly';
  const { better } = seam;
  return `, jumps where it closes${better ? `, smoothly from frame ${better.start} to ${better.end}` : ''}`;
}

function pitchText(pitch: MeasuredPitch | null): string {
  if (!pitch) return '  pitch: none found';
  const { hertz, key, cents, confidence } = pitch;
  const away = `${cents < 0 ? '' : '+'}${cents.toFixed(1)} cents`;
  return `  pitch ${hertz.toFixed(2)} Hz, key ${key} (${noteNameOf(key)}) ${away}, confidence ${confidence.toFixed(2)}`;
}

function surveyLines(survey: SampleSurvey | null, { sampleRate, channels }: SampleFacts): string[] {
  if (!survey && channels > mostMeasuredChannels)
    return [`  level: not measured, as the file has more than ${mostMeasuredChannels} channels`];
  if (!survey) return ['  level: the audio cannot be decoded'];
  const seconds = (frames: number) => `${(frames / sampleRate).toFixed(3)} s`;
  const lines = [
    `  loudness ${lufsText(survey.loudness)}, at most ${lufsText(survey.momentaryLoudness)}`,
    `  peak ${decibelText(survey.peak)}, offset from zero ${survey.dcOffset.map((one) => unsigned(one.toFixed(5))).join(', ')}`,
    `  silence ${seconds(survey.leadingSilenceFrames)} at the start${survey.isWhole ? `, ${seconds(survey.trailingSilenceFrames)} at the end` : ''}`,
  ];
  if (!survey.isWhole)
    lines.push(`  only the first ${seconds(survey.frames)} were measured; --whole measures all of it`);
  if (Number.isFinite(survey.endLevelDb))
    lines.push(`  ends ${Math.abs(survey.endLevelDb).toFixed(1)} dB below its loudest`);
  if (survey.clipping) {
    const { runs, frames, firstFrame } = survey.clipping;
    const stretches = counted(runs, 'stretch', 'stretches');
    lines.push(`  at the limit of full scale: ${stretches}, ${frames} frames, first at frame ${firstFrame}`);
  }
  if (channels > 1) {
    const likeness = survey.channelCorrelation;
    const same = survey.hasEqualChannels ? ', all channels hold the same' : '';
    lines.push(`  correlation of channels ${likeness === null ? 'none' : likeness.toFixed(2)}${same}`);
  }
  return lines;
}

/** Without the minus of a number that was rounded to zero. */
function unsigned(text: string): string {
  return text.replace(/^-(?=[0.]*$)/, '');
}

function lufsText(loudness: number | null): string {
  return loudness === null ? 'none' : `${loudness.toFixed(1)} LUFS`;
}

function decibelText(value: number): string {
  return value > 0 ? `${(20 * Math.log10(value)).toFixed(2)} dB` : 'none';
}
