import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { MidiAccess, MidiInputs } from './midiInputs';

/** The package that reaches MIDI keyboards, in the version that this was tried with (MIT licence). */
const packageName = '@julusian/midi';
const packageVersion = '3.8.1';

/** What is used of it. */
interface MidiInput {
  getPortCount(): number;
  getPortName(port: number): string;
  openPort(port: number): void;
  closePort(): void;
  destroy(): void;
  on(event: 'message', receive: (seconds: number, bytes: number[]) => void): void;
}
interface MidiPackage {
  Input: new () => MidiInput;
}

/**
 * The MIDI keyboards of this machine, by a native package that people install into a folder of their own, which is
 * loaded now and not before.
 */
export function packageInputs(folder: string): MidiAccess {
  let found: MidiPackage;
  try {
    found = createRequire(join(folder, 'inputs.js'))(packageName) as MidiPackage;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'MODULE_NOT_FOUND')
      return {
        kind: 'missing',
        install: `npm install --prefix "${folder}" ${packageName}@${packageVersion}`,
      };
    return refusal(error);
  }
  try {
    new found.Input().destroy();
    return { kind: 'inputs', inputs: inputsOf(found) };
  } catch (error) {
    return refusal(error);
  }
}

function refusal(error: unknown): MidiAccess {
  const reason = error instanceof Error ? error.message : String(error);
  return { kind: 'refused', reason: `MIDI cannot be reached on this machine: ${reason}.` };
}

function inputsOf({ Input }: MidiPackage): MidiInputs {
  return {
    names() {
      const input = new Input();
      const names = Array.from({ length: input.getPortCount() }, (_, port) => input.getPortName(port));
      input.destroy();
      return names;
    },
    open(number, receive) {
      const input = new Input();
      input.on('message', (_seconds, bytes) => receive(bytes));
      input.openPort(number);
      return () => {
        input.closePort();
        input.destroy();
      };
    },
  };
}
