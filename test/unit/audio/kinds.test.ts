import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { readerOf, silence, text } from './byteFiles';

const read = (...bytes: number[]) => readSampleFacts(readerOf(new Uint8Array([...bytes, ...silence(40)])));

// Audio Interchange File Format 1.3, 1989; RFC 9639; RFC 3533.
it.each([
  ['aiff', text('FORM\0\0\0\x2eAIFFCOMM')],
  ['aiff', text('FORM\0\0\0\x2eAIFCFVER')],
  ['flac', text('fLaC\0\0\0\x22')],
  ['ogg', text('OggS\0\x02')],
  ['flac', [...text('ID3\x04\0\0\0\0\0\x06'), ...silence(6), ...text('fLaC')]],
])('knows %s by its first bytes and does not call it a fault', async (container, bytes) => {
  const reading = await read(...bytes);
  expect(reading).toMatchObject({ kind: 'unread', container });
  if (reading.kind === 'unread') expect(reading.message).toContain('not read yet');
});

// The public documentation of the SFZ format lists WAV, Ogg Vorbis, AIFF and FLAC.
it.each([
  ['MP3', [...text('ID3\x03\0\0\0\0\0\x06'), ...silence(6)]],
  ['MPEG', [0xff, 0xfb, 0x90, 0x44]],
  ['MPEG-4', text('\0\0\0\x20ftypM4A ')],
  ['CAF', text('caff\0\x01')],
  ['AU', text('.snd\0\0\0\x18')],
])('refuses %s, which the format does not list', async (kind, bytes) => {
  const reading = await read(...bytes);
  expect(reading.kind).toBe('unreadable');
  if (reading.kind === 'unreadable') {
    expect(reading.reason).toContain(kind);
    expect(reading.reason).toContain('SFZ lists WAV, AIFF, FLAC and Ogg Vorbis');
  }
});
