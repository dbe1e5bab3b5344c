import { describe, expect, it } from 'vitest';
import type { Message } from 'vscode-languageserver';
import { fewAtOnce } from '../../../server/protocol/fewAtOnce';

const message = (fields: object): Message => ({ jsonrpc: '2.0', ...fields });
const turn = () => new Promise((resolve) => setImmediate(resolve));

describe('a client that asks for more than can be worked on', () => {
  it('is served in the order in which it asked, some requests at one time', async () => {
    const seen: string[] = [];
    const open: (() => void)[] = [];
    let running = 0;
    let most = 0;
    const strategy = fewAtOnce({ handleMessage: (one, next) => next(one) }, 3);
    const next = (one: Message) => {
      const { id, method } = one as Message & { id?: number; method?: string };
      seen.push(`${method ?? 'answer'} ${id ?? ''}`.trim());
      if (id === undefined || method === undefined) return;
      running++;
      most = Math.max(most, running);
      return new Promise<void>((resolve) =>
        open.push(() => {
          running--;
          resolve();
        }),
      );
    };
    for (let id = 0; id < 12; id++) {
      strategy.handleMessage(message({ method: 'change' }), next);
      strategy.handleMessage(message({ id, method: 'ask' }), next);
    }
    expect(seen).toEqual(['change', 'ask 0', 'change', 'ask 1', 'change', 'ask 2']);
    // What answers a request of the server, and what cancels one of the client, never waits.
    strategy.handleMessage(message({ id: 's1', result: null }), next);
    strategy.handleMessage(message({ method: '$/cancelRequest' }), next);
    expect(seen.slice(6)).toEqual(['answer s1', '$/cancelRequest']);
    while (open.length > 0) {
      open.shift()?.();
      await turn();
    }
    expect(most).toBe(3);
    const asked = seen.filter((one) => !one.startsWith('answer') && !one.startsWith('$'));
    expect(asked).toEqual(Array.from({ length: 12 }, (_, id) => ['change', `ask ${id}`]).flat());
  });
});
