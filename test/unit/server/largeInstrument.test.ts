import { describe, expect, it } from 'vitest';
import { KeyboardMapRequest } from '../../../server/protocol/requests/requests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const regions = 60_000;
const text = Array.from(
  { length: regions },
  (_, at) => `<region> sample=note ${at}.wav lokey=${at % 120} hikey=${(at % 120) + 4} pitch_keycenter=60`,
).join('\n');

describe('a large instrument', () => {
  it('holds up no small one while it is checked and drawn', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const large = await client.open('large.sfz', text);
    const small = await client.open('small.sfz', '<group>\n<region> sample=*sine key=60\n');
    const answered: string[] = [];
    const ask = async (what: string, answer: Promise<unknown>) => {
      await answer;
      answered.push(what);
    };
    // Asked for later, answered first. How it is read may be known before anybody asks; `workspace/slices.test.ts` counts its steps.
    await Promise.all([
      ask('checks', client.ask('textDocument/diagnostic', large)),
      ask('small while checks', client.ask('textDocument/codeLens', small)),
    ]);
    const map = client.connection.sendRequest(KeyboardMapRequest.type, { uri: large });
    await Promise.all([ask('map', map), ask('small while map', client.ask('textDocument/codeLens', small))]);
    expect(answered).toEqual(['small while checks', 'checks', 'small while map', 'map']);
    expect((await map).scene?.leftOut).toBe(40_000);
  });
});
