import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packageInputs } from '../../../client/midi/packageInputs';
import { temporaryFolder } from '../../temporaryFolder';

/** A stand-in with two keyboards, the second of which plays a note as soon as it is opened. */
const standIn = `
const open = [];
exports.Input = class {
  on(name, receive) { this.receive = receive; }
  getPortCount() { return 2; }
  getPortName(port) { return ['Pedal board', 'Mill keys'][port]; }
  openPort(port) { open.push(port); if (port === 1) this.receive(0, [0x90, 60, 100]); else throw new Error('it is in use'); }
  closePort() { open.pop(); }
  destroy() {}
};
exports.open = open;
`;

describe('MIDI keyboards by a package', () => {
  const folderWith = (source?: string): string => {
    const folder = temporaryFolder('midi');
    const place = join(folder, 'node_modules/@julusian/midi');
    if (source !== undefined) {
      mkdirSync(place, { recursive: true });
      writeFileSync(join(place, 'index.js'), source);
    }
    return folder;
  };

  it('are told to be missing with the package, and how to install it', () => {
    const folder = folderWith();
    expect(packageInputs(folder)).toEqual({
      kind: 'missing',
      install: expect.stringMatching(/^npm install --prefix ".*midi-\w+" @julusian\/midi@\d+\.\d+\.\d+$/),
    });
  });

  it('are refused with the reason where the machine has none to give', () => {
    const broken = folderWith(
      `exports.Input = class { constructor() { throw new Error('no sequencer'); } };`,
    );
    expect(packageInputs(broken)).toEqual({
      kind: 'refused',
      reason: 'MIDI cannot be reached on this machine: no sequencer.',
    });
  });

  it('are listed, opened and closed', () => {
    const access = packageInputs(folderWith(standIn));
    if (access.kind !== 'inputs') throw new Error(access.kind);
    const { inputs } = access;
    expect(inputs.names()).toEqual(['Pedal board', 'Mill keys']);
    const received: (readonly number[])[] = [];
    const close = inputs.open(1, (bytes) => received.push(bytes));
    expect(received).toEqual([[0x90, 60, 100]]);
    close();
    expect(() => inputs.open(0, () => {})).toThrow('it is in use');
  });
});
