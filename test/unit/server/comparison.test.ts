import { mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  CompareRecordingRequest,
  CompareRequest,
} from '../../../server/protocol/requests/comparisonRequests';
import { run } from '../commandLine/runInFolder';
import { EditorClient } from './host/editorClient';
import { bundle, home, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const original =
  '<group> sample=*saw ampeg_release=0.05\n<region> key=60\n<region> key=64\n<region> key=67\n';
const files = {
  'original.sfz': original,
  'port.sfz': original.replace('key=64', 'key=64 tune=20'),
  'bound.sfz': original.replace('<group>', '<group> polyphony=90'),
  'no.wav': 'no audio',
  'odd.mid': 'no music',
};

describe('comparing over the protocol', () => {
  let client: EditorClient;
  let place: string;
  const uri = (name: string) => client.uri(name);
  const withRecording = (name: string, recording: string) =>
    client.connection.sendRequest(CompareRecordingRequest.type, {
      uri: uri(name),
      recordingUri: uri(recording),
    });

  beforeAll(async () => {
    place = mkdtempSync(join(home, 'compared-'));
    for (const [name, text] of Object.entries(files)) writeFileSync(join(place, name), text);
    await run(place, ['sweep', 'original.sfz', '--output', 'swept.mid']);
    for (const output of ['swept.wav', 'alone.wav', 'odd.wav'])
      await run(place, ['render', 'original.sfz', '--midi', 'swept.mid', '--output', output]);
  });
  beforeEach(async () => {
    client = await EditorClient.start(bundle, { folder: place });
    for (const name of ['original.sfz', 'port.sfz', 'bound.sfz'] as const)
      await client.open(name, files[name]);
  });

  it('finds in the text what a recording does otherwise', async () => {
    // With the MIDI file of its name beside it, and with the usual sweep.
    for (const recording of ['swept.wav', 'alone.wav']) {
      const { html, summary, places } = await withRecording('port.sfz', recording);
      expect(summary).toContain('3 of 3 notes');
      expect(html).toContain('The tuning differs');
      expect(places).toMatchObject([
        {
          uri: uri('port.sfz'),
          range: { start: { line: 2 } },
          message: expect.stringContaining('−20 cents'),
        },
      ]);
    }
    expect((await withRecording('original.sfz', 'alone.wav')).places).toEqual([]);
  });

  it('says in a sentence what is wrong with a recording', async () => {
    for (const [recording, words] of [
      ['no.wav', 'no audio'],
      ['lost.wav', 'no audio'],
      ['odd.wav', 'no Standard MIDI File'],
    ]) {
      const { reason, html } = await withRecording('port.sfz', recording);
      expect(html).toBeUndefined();
      expect(reason).toContain(words);
    }
  });

  it('finds in both texts what they say otherwise and nobody hears', async () => {
    const { places } = await client.connection.sendRequest(CompareRequest.type, {
      uri: uri('original.sfz'),
      otherUri: uri('bound.sfz'),
    });
    expect(places?.map(({ uri: at, message }) => [at, message])).toEqual([
      [uri('original.sfz'), expect.stringContaining('polyphony is not set')],
      [uri('bound.sfz'), expect.stringContaining('polyphony is not set on the first side and 90')],
    ]);
  });
});
