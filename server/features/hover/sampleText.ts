import type {
  MeasuredPitch,
  SampleFacts,
  SampleReading,
  SampleState,
  SampleSurvey,
} from '../../model/samples';
import { visibleText } from '../../model/text/visibleText';
import { keyText } from '../../model/wording/rangeWords';
import { escaped } from '../sampleReport/markdown';

/** What was measured in a sample: `null` where it cannot be, `undefined` while it is not known. */
export interface MeasuredSample {
  pitch: MeasuredPitch | null | undefined;
  survey: SampleSurvey | null | undefined;
}

/**
 * What is known of a sample, as Markdown. `nearest` are paths to offer where there is none, `measured` is what was
 * measured by now.
 */
export function sampleMarkdown(
  path: string,
  state: SampleState,
  nearest: readonly string[],
  measured?: MeasuredSample,
): string {
  const lines = [code(path)];
  switch (state.kind) {
    case 'pending':
      lines.push('Not looked at yet.');
      break;
    case 'missing':
      lines.push('There is no such file.');
      if (nearest.length > 0) lines.push(`Nearest names: ${nearest.map(code).join(', ')}.`);
      break;
    case 'folder':
      lines.push('This is a folder, not a sample.');
      break;
    case 'otherCase':
      lines.push(
        `The file is named ${code(state.actual)}. Systems that tell capital letters apart don't find it.`,
      );
      if (state.reading) lines.push(...readingLines(state.reading));
      break;
    case 'file':
      if (state.reading) lines.push(...readingLines(state.reading));
      break;
  }
  if (measured) lines.push(...measuredLines(measured));
  return lines.join('\n\n');
}

/** What a file name or path generator such as `*sine` is, as Markdown. */
export function generatorMarkdown(name: string): string {
  return `${code(name)}\n\nMade by the player itself; there is no file.`;
}

function readingLines(reading: SampleReading): string[] {
  switch (reading.kind) {
    case 'facts':
      return factLines(reading.facts);
    case 'unreadable':
      return [escaped(reading.reason)];
  }
}

function factLines(facts: SampleFacts): string[] {
  const { container, encoding, bitsPerSample, sampleRate, channels, frames, lengthSeconds } = facts;
  const lines = [
    [
      container.toUpperCase(),
      ...(encoding === 'pcm' || encoding === container ? [] : [escaped(encoding)]),
      ...(bitsPerSample > 0 ? [`${bitsPerSample} bits`] : []),
      `${sampleRate} Hz`,
      channelsText(channels),
      ...(frames > 0 ? [`${frames} frames (${lengthSeconds.toFixed(2)} s)`] : []),
    ].join(', '),
  ];
  for (const { start, end, type } of facts.loops.slice(0, 4)) {
    lines.push(`Loop: frames ${start} to ${end}${type === 'forward' ? '' : `, ${type}`}`);
  }
  if (facts.rootKey !== null) {
    const cents = facts.fineTuneCents;
    const tuning =
      cents === null || Math.round(cents) === 0 ? '' : `, ${cents > 0 ? '+' : ''}${Math.round(cents)} cents`;
    lines.push(`Root key in the file: ${keyText(facts.rootKey)}${tuning}`);
  }
  for (const { message } of facts.problems.slice(0, 3)) lines.push(escaped(message));
  return lines;
}

function measuredLines({ pitch, survey }: MeasuredSample): string[] {
  const parts: string[] = [];
  if (pitch) {
    const cents = Math.round(pitch.cents);
    const away = cents === 0 ? '' : `, ${cents > 0 ? '+' : ''}${cents} cents`;
    const unsure = pitch.confidence < 0.8 ? ', not sure' : '';
    parts.push(`Sounds at ${keyText(pitch.key)}${away} (${pitch.hertz.toFixed(1)} Hz${unsure})`);
  } else if (pitch === null && survey) parts.push('No pitch found');
  if (survey && survey.loudness !== null) parts.push(`loudness ${survey.loudness.toFixed(1)} LUFS`);
  if (survey && survey.peak > 0) parts.push(`peak ${(20 * Math.log10(survey.peak)).toFixed(1)} dB`);
  return parts.length > 0 ? [parts.join(', ')] : [];
}

function channelsText(channels: number): string {
  return channels === 1 ? 'mono' : channels === 2 ? 'stereo' : `${channels} channels`;
}

/** Text as code in Markdown, whatever it holds. */
export function code(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([ticks]) => ticks.length));
  const fence = '`'.repeat(longest + 1);
  const space = text.startsWith('`') || text.endsWith('`') ? ' ' : '';
  return `${fence}${space}${visibleText(text.replace(/\s+/g, ' '))}${space}${fence}`;
}
