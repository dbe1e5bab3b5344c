import { noteNameOf } from '../../model/keys';
import type { MessagePart } from '../../sound/render/messages';
import { notePart } from '../../sound/render/messages';
import { readMidiPart } from '../../sound/render/midiPart';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { keyWord, secondsWord, wholeWord } from './noteWords';

/** What a render plays, with a word for it, and the absolute path of the MIDI file where there is one. */
export interface PlayedParts {
  parts: MessagePart[];
  midiPath?: string;
}

const usualVelocity = 100;
const usualHoldSeconds = 1;
const mostHoldSeconds = 600;
const mostMidiBytes = 64 << 20;

/** Reads what is to be played from `--key`, `--keys` or `--midi`, with `--velocity` and `--hold`. */
export async function playedParts(
  terminal: Terminal,
  options: Readonly<Record<string, string | undefined>>,
): Promise<PlayedParts> {
  const asked = ['key', 'keys', 'midi'].filter((name) => options[name] !== undefined);
  if (asked.length !== 1) throw new CommandError('render needs one of --key, --keys and --midi');
  const velocity = wholeWord('velocity', options.velocity, [1, 127]);
  const hold = secondsWord('hold', options.hold, mostHoldSeconds);
  if (options.midi !== undefined) {
    for (const [name, value] of Object.entries({ velocity, hold })) {
      if (value !== undefined)
        throw new CommandError(`--${name} is for --key and --keys; a MIDI file has its own`);
    }
    return midiParts(terminal, options.midi);
  }
  const note = { velocity: velocity ?? usualVelocity, holdSeconds: hold ?? usualHoldSeconds };
  const [low, high] = options.key === undefined ? keyRange(options.keys ?? '') : oneKey(options.key);
  const keys = Array.from({ length: high - low + 1 }, (_, at) => low + at);
  return { parts: keys.map((key) => notePart(key, note)) };
}

function oneKey(text: string): [number, number] {
  const key = keyWord('key', text) ?? 0;
  return [key, key];
}

/** Two keys with `-` between them; those of note names may have one of their own. */
function keyRange(text: string): [number, number] {
  const parts = /^(\d{1,3}|[a-g][^-]*-?\d)-(.+)$/i.exec(text);
  if (!parts) throw new CommandError(`--keys takes a range such as 60-72 or C4-C5, not "${text}"`);
  const low = keyWord('keys', parts[1]) ?? 0;
  const high = keyWord('keys', parts[2]) ?? 0;
  if (low > high) throw new CommandError(`--keys: ${noteNameOf(low)} is above ${noteNameOf(high)}`);
  return [low, high];
}

/** What a MIDI file plays. */
export async function midiParts(terminal: Terminal, name: string): Promise<PlayedParts> {
  const path = absolutePath(terminal, name);
  const reader = await terminal.files.open(path);
  if (!reader) throw new CommandError(`${name}: there is no such file, or it cannot be read`);
  try {
    if (reader.size > mostMidiBytes) throw new CommandError(`${name}: this is too large for a MIDI file`);
    const reading = readMidiPart(await reader.read(0, reader.size));
    if (reading.kind === 'unreadable') throw new CommandError(`${name}: ${reading.reason}`);
    if (reading.channels.length > 1) {
      const channels = reading.channels.join(', ');
      terminal.error(
        `zonewright: ${name} plays on channels ${channels}; all are played on this one instrument\n`,
      );
    }
    return { parts: [reading.part], midiPath: path };
  } finally {
    await reader.close();
  }
}
