import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MidiBytes } from '../../../client/midi/midiBytes';

// MIDI Association, MIDI 1.0 Detailed Specification 4.2: table II (channel voice messages), table III (mode messages), table V
// and VI (system messages), and the section on running status.

const read = (...bytes: number[]) => new MidiBytes().take(bytes);

describe('bytes of a MIDI keyboard', () => {
  it('are channel messages, of any channel', () => {
    expect(read(0x90, 60, 100)).toEqual([{ kind: 'noteOn', key: 60, velocity: 100 }]);
    expect(read(0x8f, 60, 30)).toEqual([{ kind: 'noteOff', key: 60, velocity: 30 }]);
    expect(read(0xa3, 60, 77)).toEqual([{ kind: 'polyPressure', key: 60, value: 77 }]);
    expect(read(0xb0, 64, 127)).toEqual([{ kind: 'controller', number: 64, value: 127 }]);
    expect(read(0xc1, 5)).toEqual([{ kind: 'program', number: 5 }]);
    expect(read(0xd2, 99)).toEqual([{ kind: 'channelPressure', value: 99 }]);
  });

  it('bend with the low seven bits first, 2000H at rest', () => {
    expect(read(0xe0, 0, 0x40, 0xe0, 0, 0, 0xe0, 0x7f, 0x7f, 0xe0, 1, 0x40)).toEqual(
      [0, -8192, 8191, 1].map((value) => ({ kind: 'bend', value })),
    );
  });

  it('let a key go by a note-on of velocity 0, as fast as where nothing is said', () => {
    expect(read(0x90, 60, 0)).toEqual([{ kind: 'noteOff', key: 60, velocity: 64 }]);
  });

  it('leave the status out while it is the same', () => {
    expect(read(0x90, 60, 100, 64, 90, 60, 0, 0xd0, 10, 20)).toEqual([
      { kind: 'noteOn', key: 60, velocity: 100 },
      { kind: 'noteOn', key: 64, velocity: 90 },
      { kind: 'noteOff', key: 60, velocity: 64 },
      { kind: 'channelPressure', value: 10 },
      { kind: 'channelPressure', value: 20 },
    ]);
  });

  it('may have real time between any two of them', () => {
    expect(read(0x90, 0xf8, 60, 0xfe, 100, 0xfa, 61, 0xf8, 101)).toEqual([
      { kind: 'noteOn', key: 60, velocity: 100 },
      { kind: 'noteOn', key: 61, velocity: 101 },
    ]);
  });

  it('are passed over where they are system messages or belong to nothing', () => {
    expect(read(60, 100, 0xf0, 1, 2, 3, 0xf7, 60, 100, 0xf2, 1, 2, 0xf3, 4, 0xf6, 60, 100)).toEqual([]);
    // A system message ends running status; a new status ends one that lacks data.
    expect(read(0x90, 60, 100, 0xf1, 5, 61, 100)).toHaveLength(1);
    expect(read(0x90, 60, 0xb0, 1, 2)).toEqual([{ kind: 'controller', number: 1, value: 2 }]);
  });

  it('read the same however they are cut into pieces, and never beyond their ranges', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 255 })), fc.nat(20), (bytes, cut) => {
        const parts = new MidiBytes();
        const inPieces = [...parts.take(bytes.slice(0, cut)), ...parts.take(bytes.slice(cut))];
        expect(inPieces).toEqual(read(...bytes));
        for (const message of inPieces) {
          for (const [name, value] of Object.entries(message)) {
            if (typeof value !== 'number') continue;
            const [least, most] = message.kind === 'bend' ? [-8192, 8191] : [0, 127];
            expect(value, name).toBeGreaterThanOrEqual(least!);
            expect(value, name).toBeLessThanOrEqual(most!);
          }
        }
      }),
    );
  });
});
