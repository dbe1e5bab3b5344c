import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { unpacked } from '../../../server/protocol/conversion/packedData';
import {
  FontPartRequest,
  FontRequest,
  FontSampleRequest,
  FontTextRequest,
  WriteFontRequest,
} from '../../../server/protocol/requests/fontRequests';
import { KeyboardMapRequest } from '../../../server/protocol/requests/requests';
import type { AudibleInstrument } from '../../../server/protocol/requests/soundRequests';
import { SampleAudioRequest, SoundRequest } from '../../../server/protocol/requests/soundRequests';
import { Generator as g } from '../../../server/soundfont/generators';
import { readerOf } from '../audio/byteFiles';
import { fontBytes, simpleFont, tone } from '../soundfont/fontBytes';
import { brokenRules } from '../soundfont/publishedRules';
import { wav } from '../soundfont/writtenFonts';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const two = fontBytes({
  info: [['ICOP', 'Free for all']],
  presets: [
    { name: 'Reed', zones: [{ gens: [[g.instrument, 0]] }] },
    {
      name: 'Kit',
      bank: 128,
      program: 3,
      zones: [
        {
          gens: [
            [g.keyRange, [36, 40]],
            [g.instrument, 0],
          ],
        },
      ],
    },
  ],
  instruments: [{ name: 'I', zones: [{ gens: [[g.sample, 0]] }] }],
  samples: [{ name: 'S', frames: tone(300, 20) }],
});

describe('SoundFonts over the protocol', () => {
  const start = async (files: Record<string, string | Uint8Array>) => {
    const place = `${folder}/fonts-${Math.random().toString(36).slice(2)}`;
    await mkdir(place, { recursive: true });
    for (const [name, content] of Object.entries(files)) await writeFile(`${place}/${name}`, content);
    const client = await EditorClient.start(bundle, { folder: place });
    const uri = (name: string) => new URL(`file://${place}/${name}`).toString();
    return { client, uri, place };
  };

  it('tell what is in a font', async () => {
    const { client, uri } = await start({
      'two.sf2': two,
      'other.sf2': 'no font',
      'cut.sf2': two.slice(0, 400),
    });
    const ask = (name: string) => client.connection.sendRequest(FontRequest.type, { uri: uri(name) });
    expect(await ask('two.sf2')).toEqual({
      name: 'Test',
      version: '2.01',
      texts: [{ kind: 'copyright', text: 'Free for all' }],
      bytes: two.length,
      bits: 16,
      samples: 1,
      presets: [
        { bank: 0, program: 0, name: 'Reed', regions: 1, keys: [0, 127], velocities: [1, 127] },
        { bank: 128, program: 3, name: 'Kit', regions: 1, keys: [36, 40], velocities: [1, 127] },
      ],
      problems: [],
    });
    expect(await ask('other.sf2')).toEqual({ problem: 'This file is no SoundFont, or it cannot be read.' });
    expect(await ask('cut.sf2')).toMatchObject({ problem: expect.stringMatching(/cut short/) });
    expect(await ask('none.sf2')).toMatchObject({ problem: expect.any(String) });
    await client.stop();
  });

  it('show and play a preset, with audio out of the font', async () => {
    const { client, uri } = await start({ 'two.sf2': two });
    const { connection } = client;
    const place = { uri: uri('two.sf2'), preset: { bank: 128, program: 3 } };
    const { scene } = await connection.sendRequest(KeyboardMapRequest.type, place);
    expect(scene?.shapes.map(({ lowKey, highKey }) => [lowKey, highKey])).toEqual([[36, 40]]);
    const { instrument } = await connection.sendRequest(SoundRequest.type, place);
    const { program, sampleStates } = unpacked(instrument) as AudibleInstrument;
    expect(program.samples).toEqual(['two.sf2/S.wav']);
    expect(sampleStates).toEqual([expect.stringMatching(/^\d+ [\d.]+$/)]);
    const audio = await connection.sendRequest(SampleAudioRequest.type, {
      ...place,
      sample: 'two.sf2/S.wav',
      startFrame: 10,
      frames: 4,
    });
    expect(audio.totalFrames).toBe(300);
    const values = new Float32Array(Uint8Array.from(Buffer.from(audio.channels[0]!, 'base64')).buffer);
    expect([...values]).toEqual(
      tone(300, 20)
        .slice(10, 14)
        .map((value) => value / 32768),
    );
    // The sample by itself: the first region's, as recorded.
    const alone = await connection.sendRequest(SoundRequest.type, {
      ...place,
      sampleOf: scene!.shapes[0]!.regions[0]!.header,
    });
    const single = unpacked(alone.instrument) as AudibleInstrument;
    expect(single.program.samples).toEqual(['two.sf2/S.wav']);
    expect([single.playable.regionCount, single.playable.rootKey[0]]).toEqual([1, 60]);
    const none = await connection.sendRequest(SoundRequest.type, { ...place, sampleOf: 999 });
    expect((unpacked(none.instrument) as AudibleInstrument).playable.regionCount).toBe(0);
    // Only what sound was asked for is read: no other preset, and nothing else in the folder.
    const other = { sample: 'two.sf2/S.wav', startFrame: 0, frames: 4 };
    expect(
      await connection.sendRequest(SampleAudioRequest.type, { uri: uri('two.sf2'), ...other }),
    ).toMatchObject({ totalFrames: 0 });
    const gone = { uri: uri('two.sf2'), preset: { bank: 1, program: 3 } };
    for (const type of [KeyboardMapRequest.type, SoundRequest.type])
      expect(
        await connection.sendRequest<object, { reason?: string }, void>(type as never, gone),
      ).toMatchObject({
        reason: expect.stringMatching(/no such preset/),
      });
    await client.stop();
  });

  it('give presets as text, and the samples that these need as files', async () => {
    const { client, uri } = await start({ 'two.sf2': two });
    const result = await client.connection.sendRequest(FontTextRequest.type, {
      uri: uri('two.sf2'),
      preset: { bank: 128, program: 3 },
      samples: 'Samples',
    });
    if ('problem' in result) throw new Error(result.problem);
    expect(result.texts.map(({ file }) => file)).toEqual(['128-003 Kit.sfz']);
    expect(result.texts[0]!.text).toMatch(/sample=Samples\/S.wav lokey=36 hikey=40/);
    expect(result.page).toMatch(/^# Conversion notes for two.sf2/);
    const [sample] = result.samples;
    const parts: Buffer[] = [];
    for (let at = 0; at < sample!.bytes; at += 100) {
      const { data } = await client.connection.sendRequest(FontSampleRequest.type, {
        uri: uri('two.sf2'),
        name: sample!.name,
        start: at,
        length: 100,
      });
      parts.push(Buffer.from(data ?? '', 'base64'));
    }
    const bytes = new Uint8Array(Buffer.concat(parts));
    expect(bytes.length).toBe(sample!.bytes);
    expect(await readSampleFacts(readerOf(bytes))).toMatchObject({ kind: 'facts', facts: { frames: 300 } });
    const all = await client.connection.sendRequest(FontTextRequest.type, { uri: uri('two.sf2') });
    expect(
      'texts' in all && all.texts.map(({ file, text }) => [file, /sample=two.sf2\/S.wav/.test(text)]),
    ).toEqual([
      ['000-000 Reed.sfz', true],
      ['128-003 Kit.sfz', true],
    ]);
    const none = await client.connection.sendRequest(FontTextRequest.type, {
      uri: uri('two.sf2'),
      preset: { bank: 9, program: 9 },
    });
    expect(none).toEqual({ problem: 'The SoundFont has no such preset any more.' });
    await client.stop();
  });

  it('find no fault with text whose samples stay in the font', async () => {
    const { client, uri } = await start({ 'two.sf2': two });
    const result = await client.connection.sendRequest(FontTextRequest.type, { uri: uri('two.sf2') });
    if ('problem' in result) throw new Error(result.problem);
    const opened = await client.open('preset.sfz', result.texts[0]!.text);
    expect((await client.findings(opened)).join()).not.toMatch(/sample-missing/);
    await client.stop();
  });

  it('write an instrument as a font, one part after the other', async () => {
    const { client, place, uri } = await start({
      'a.wav': wav([tone(200, 20)]),
      'a.sfz': '<region> sample=a.wav polyphony=3',
      'b.sfz': '<region> sample=gone.wav',
    });
    const opened = await client.open('a.sfz', await readFile(`${place}/a.sfz`, 'utf8'));
    expect(opened).toBe(uri('a.sfz'));
    const result = await client.connection.sendRequest(WriteFontRequest.type, { uri: opened, name: 'Mill' });
    if ('problem' in result) throw new Error(result.problem);
    expect(result.notes).toMatchObject([{ kind: 'dropped', line: 1 }]);
    const parts: Buffer[] = [];
    for (;;) {
      const { data, problem } = await client.connection.sendRequest(FontPartRequest.type, {
        font: result.font,
      });
      expect(problem).toBeUndefined();
      if (data === undefined) break;
      parts.push(Buffer.from(data, 'base64'));
    }
    const bytes = new Uint8Array(Buffer.concat(parts));
    expect(bytes.length).toBe(result.bytes);
    expect(brokenRules(bytes)).toEqual([]);
    expect(await client.connection.sendRequest(FontPartRequest.type, { font: result.font })).toEqual({
      problem: 'Another SoundFont was begun in the meantime.',
    });
    const other = await client.open('b.sfz', '<region> sample=gone.wav');
    expect(
      await client.connection.sendRequest(WriteFontRequest.type, { uri: other, name: 'B' }),
    ).toMatchObject({ problem: expect.stringMatching(/no region that a SoundFont can hold/) });
    await client.stop();
  });

  it('see a font that changes', async () => {
    const { client, uri, place } = await start({ 'two.sf2': two });
    const ask = () => client.connection.sendRequest(FontRequest.type, { uri: uri('two.sf2') });
    expect(await ask()).toMatchObject({ samples: 1, presets: [{}, {}] });
    await writeFile(`${place}/two.sf2`, simpleFont());
    expect(await ask()).toMatchObject({ samples: 1, presets: [{ name: 'Reed' }] });
    await client.stop();
  });
});
