import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { readerOf, silence, text } from './byteFiles';

const read = (...bytes: number[]) => readSampleFacts(readerOf(new Uint8Array([...bytes, ...silence(40)])));

// Audio Interchange File Format 1.3, 1989; RFC 9639; RFC 3533.
it.each([
  ['AIFF', text('FORM\0\0\0\x2eAIFFCOMM')],
  ['AIFF', text('FORM\0\0\0\x2eAIFCFVER')],
  ['FLAC', text('fLaC\x7f\0\0\x22')],
  ['Ogg', text('OggS\x01\x02')],
  ['FLAC', [...text('ID3\x04\0\0\0\0\0\x06'), ...silence(6), ...text('fLaC\x7f')]],
])('knows %s by its first bytes', async (kind, bytes) => {
  const reading = await read(...bytes);
  expect(reading.kind).toBe('unreadable');
  if (reading.kind === 'unreadable') expect(reading.reason).toContain(`This ${kind} file`);
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
