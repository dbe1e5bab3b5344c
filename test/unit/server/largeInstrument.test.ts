import { describe, expect, it } from 'vitest';
import { KeyboardMapRequest } from '../../../server/protocol/requests/requests';
import { EditorClient } from './editorClient';
import { bundle, folder } from './serverPlaces';

const regions = 60_000;
const text = Array.from(
  { length: regions },
  (_, at) => `<region> sample=note ${at}.wav lokey=${at % 120} hikey=${(at % 120) + 4} pitch_keycenter=60`,
).join('\n');

describe('a large instrument', () => {
  it('holds up no small one while it is read, checked and drawn', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const large = await client.open('large.sfz', text);
    const small = await client.open('small.sfz', '<group>\n<region> sample=*sine key=60\n');
    const answered: string[] = [];
    const ask = async (what: string, answer: Promise<unknown>) => {
      await answer;
      answered.push(what);
    };
    for (const [what, method] of [
      ['reading', 'textDocument/documentSymbol'],
      ['checks', 'textDocument/diagnostic'],
    ] as const) {
      // Asked for later, answered first.
      await Promise.all([
        ask(what, client.ask(method, large)),
        ask(`small while ${what}`, client.ask('textDocument/codeLens', small)),
      ]);
    }
    const map = client.connection.sendRequest(KeyboardMapRequest.type, { uri: large });
    await Promise.all([ask('map', map), ask('small while map', client.ask('textDocument/codeLens', small))]);
    const whiles = [
      'small while reading',
      'reading',
      'small while checks',
      'checks',
      'small while map',
      'map',
    ];
    expect(answered).toEqual(whiles);
    expect((await map).scene?.leftOut).toBe(40_000);
  });
});
