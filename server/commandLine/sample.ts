import { measureSamplePitch } from '../audio/measure/measureSample';
import { readSampleFacts } from '../audio/readSampleFacts';
import { noteNameOf } from '../model/keys';
import type { MeasuredPitch, SampleFacts, SampleReading } from '../model/samples';
import { CommandError } from './commandError';
import { absolutePath, shownPath } from './input';
import type { Terminal } from './terminal';
import { readWords } from './words';

interface Found {
  path: string;
  facts: SampleFacts;
  pitch: MeasuredPitch | null;
}

/** `zonewright sample`: what the headers of sample files say, and the pitch of their audio where it is asked for. */
export async function sample(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, { format: ['text', 'json'], pitch: 'switch' });
  if (paths.length === 0) throw new CommandError('sample takes at least one file');
  const measuring = switches.has('pitch');
  const found: Found[] = [];
  const failed: string[] = [];
  for (const name of paths) {
    const path = absolutePath(terminal, name);
    const { reading, pitch } = await readSample(terminal, path, measuring);
    if (reading.kind === 'facts')
      found.push({ path: shownPath(terminal, path), facts: reading.facts, pitch });
    else failed.push(`${name}: ${reading.reason}`);
  }
  if (options.format === 'json') {
    for (const { path, facts, pitch } of found) {
      const { problems, ...said } = facts;
      const line = {
        path,
        ...said,
        pitch: pitch && rounded(pitch),
        problems: problems.map((problem) => problem.message),
      };
      await terminal.out(`${JSON.stringify(line)}\n`);
    }
  } else for (const one of found) await terminal.out(sampleText(one, measuring));
  if (failed.length > 0) throw new CommandError(failed.join('; '));
  return 0;
}

async function readSample(
  terminal: Terminal,
  path: string,
  measuring: boolean,
): Promise<{ reading: SampleReading; pitch: MeasuredPitch | null }> {
  const reader = await terminal.files.open(path);
  if (!reader) {
    const reason = 'there is no such file, or it cannot be read';
    return { reading: { kind: 'unreadable', reason }, pitch: null };
  }
  try {
    const reading = await readSampleFacts(reader);
    const pitch = measuring && reading.kind === 'facts' ? await measureSamplePitch(reader) : null;
    return { reading, pitch };
  } finally {
    await reader.close();
  }
}

/** With no more digits than a measurement has. */
function rounded({ hertz, key, cents, confidence }: MeasuredPitch): MeasuredPitch {
  return {
    hertz: Number(hertz.toPrecision(7)),
    key,
    cents: Number(cents.toFixed(2)),
    confidence: Number(confidence.toFixed(3)),
  };
}

function sampleText({ path, facts, pitch }: Found, measuring: boolean): string {
  const lines = [
    `${path}`,
    `  ${encodingText(facts)}, ${facts.sampleRate} Hz, ${channelText(facts.channels)}`,
    `  ${facts.frames} frames, ${facts.lengthSeconds.toFixed(3)} s`,
    ...facts.loops.map((loop) => `  loop ${loop.type}, frames ${loop.start} to ${loop.end}`),
  ];
  if (facts.rootKey !== null) {
    const tune = facts.fineTuneCents
      ? `, ${facts.fineTuneCents > 0 ? '+' : ''}${facts.fineTuneCents} cents`
      : '';
    lines.push(`  root key ${facts.rootKey} (${noteNameOf(facts.rootKey)})${tune}`);
  }
  if (measuring) lines.push(pitchText(pitch));
  for (const problem of facts.problems) lines.push(`  note: ${problem.message}`);
  return `${lines.join('\n')}\n`;
}

/** Container, encoding and depth, as far as they say something. */
function encodingText({ container, encoding, bitsPerSample }: SampleFacts): string {
  const parts: string[] = [container];
  if (encoding !== container) parts.push(encoding);
  if (bitsPerSample > 0) parts.push(`${bitsPerSample} bit`);
  return parts.join(', ');
}

function pitchText(pitch: MeasuredPitch | null): string {
  if (!pitch) return '  pitch: none found';
  const { hertz, key, cents, confidence } = pitch;
  const away = `${cents < 0 ? '' : '+'}${cents.toFixed(1)} cents`;
  return `  pitch ${hertz.toFixed(2)} Hz, key ${key} (${noteNameOf(key)}) ${away}, confidence ${confidence.toFixed(2)}`;
}

function channelText(channels: number): string {
  return channels === 1 ? 'mono' : channels === 2 ? 'stereo' : `${channels} channels`;
}
