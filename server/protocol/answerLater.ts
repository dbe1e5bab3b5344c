import type { Connection, GenericRequestHandler, RequestHandler } from 'vscode-languageserver';
import { RequestType } from 'vscode-languageserver';

/** Takes the answer to a kind of request. */
export type AnswerRequest = <Params, Result, Fault>(
  type: RequestType<Params, Result, Fault>,
  answer: RequestHandler<Params, Result, Fault>,
) => void;

/** Has requests answered by what is loaded with the first of them, so that a start does not wait for it. */
export function answerLater(
  connection: Connection,
  requests: readonly { type: { method: string } }[],
  load: () => Promise<(answer: AnswerRequest) => void>,
): void {
  let loaded: Promise<ReadonlyMap<string, GenericRequestHandler<unknown, unknown>>> | undefined;
  const answers = async () => {
    const byMethod = new Map<string, GenericRequestHandler<unknown, unknown>>();
    const handle = await load();
    handle((type, answer) => byMethod.set(type.method, answer));
    return byMethod;
  };
  for (const { type } of requests) {
    const { method } = type;
    connection.onRequest(new RequestType<unknown, unknown, unknown>(method), async (params, token) => {
      loaded ??= answers();
      const answer = (await loaded).get(method);
      if (!answer) throw new Error(`Nothing answers ${method}.`);
      return answer(params, token);
    });
  }
}
