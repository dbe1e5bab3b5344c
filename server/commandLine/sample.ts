import { readSampleFacts } from '../audio/readSampleFacts';
import { noteNameOf } from '../model/keys';
import type { SampleFacts, SampleReading } from '../model/samples';
import { CommandError } from './commandError';
import { absolutePath, shownPath } from './input';
import type { Terminal } from './terminal';
import { readWords } from './words';

/** `zonewright sample`: what the headers of sample files say. */
export async function sample(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, { format: ['text', 'json'], pitch: 'switch' });
  if (paths.length === 0) throw new CommandError('sample takes at least one file');
  if (switches.has('pitch')) terminal.error('zonewright: pitch is not measured in this version\n');
  const found: { path: string; facts: SampleFacts }[] = [];
  const failed: string[] = [];
  for (const name of paths) {
    const path = absolutePath(terminal, name);
    const reading = await readSample(terminal, path);
    if (reading.kind === 'facts') found.push({ path: shownPath(terminal, path), facts: reading.facts });
    else failed.push(`${name}: ${reading.kind === 'unread' ? reading.message : reading.reason}`);
  }
  if (options.format === 'json') {
    for (const { path, facts } of found) {
      const { problems, ...said } = facts;
      const line = { path, ...said, pitch: null, problems: problems.map((problem) => problem.message) };
      await terminal.out(`${JSON.stringify(line)}\n`);
    }
  } else for (const { path, facts } of found) await terminal.out(sampleText(path, facts));
  if (failed.length > 0) throw new CommandError(failed.join('; '));
  return 0;
}

async function readSample(terminal: Terminal, path: string): Promise<SampleReading> {
  const reader = await terminal.files.open(path);
  if (!reader) return { kind: 'unreadable', reason: 'there is no such file, or it cannot be read' };
  try {
    return await readSampleFacts(reader);
  } finally {
    await reader.close();
  }
}

function sampleText(path: string, facts: SampleFacts): string {
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

function channelText(channels: number): string {
  return channels === 1 ? 'mono' : channels === 2 ? 'stereo' : `${channels} channels`;
}
