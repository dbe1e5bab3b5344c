import type { Message, MessageStrategy } from 'vscode-languageserver';

/** Requests that are worked on at one time; more than an editor makes at once, fewer than fill the memory with answers. */
const mostAtOnce = 32;

type Next = Parameters<MessageStrategy['handleMessage']>[1];

/**
 * Has requests wait while many are under way, and with them all that came behind, so that each still sees the text as it
 * was when it came. What answers a request of ours never waits: somebody may be waiting for it.
 */
export function fewAtOnce(inner: MessageStrategy, most = mostAtOnce): MessageStrategy {
  const waiting: { message: Message; next: Next }[] = [];
  let running = 0;

  const start = (message: Message, next: Next) => {
    const result = inner.handleMessage(message, next);
    if (!('id' in message) || !(result instanceof Promise)) return result;
    running++;
    const done = () => {
      running--;
      goOn();
    };
    result.then(done, done);
    return result;
  };

  const goOn = () => {
    while (running < most) {
      const first = waiting.shift();
      if (!first) return;
      void start(first.message, first.next);
    }
  };

  return {
    handleMessage(message, next) {
      const method =
        'method' in message ? String((message as Message & { method: unknown }).method) : undefined;
      const mustGo = method === undefined || method.startsWith('$/') || method === 'exit';
      if (mustGo) return inner.handleMessage(message, next);
      if (waiting.length === 0 && running < most) return start(message, next);
      waiting.push({ message, next });
    },
  };
}
