import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { timeOf } from '../compare';
import { keystrokesIn } from '../keystrokes';
import type { AddRow } from '../table';
import { quantilesRow } from '../table';

/** A keystroke in a large document to the findings that the language server answers, over standard input and output. */
export async function measureProtocol(
  add: AddRow,
  text: string,
  folder: string,
  server: string,
): Promise<void> {
  if (!existsSync(server)) {
    process.stderr.write('The server is not built (npm run build), so the protocol is not measured.\n');
    return;
  }
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  // The server asks for settings and to be told of files; none of that matters here.
  connection.onRequest((_method, params) => {
    const items = (params as { items?: unknown[] } | undefined)?.items;
    return items ? items.map(() => null) : null;
  });
  // What the server measures in the background would be measured along.
  const measured = new Promise<void>((resolve) => {
    connection.onUnhandledProgress(({ value }) => {
      if ((value as { kind?: string }).kind === 'end') resolve();
    });
  });
  connection.listen();
  try {
    const uri = pathToFileURL(`${folder}/large.sfz`).href;
    const rootUri = pathToFileURL(folder).href;
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri,
      workspaceFolders: [{ uri: rootUri, name: 'bench' }],
      capabilities: {
        textDocument: {
          diagnostic: { dynamicRegistration: false },
          documentSymbol: { hierarchicalDocumentSymbolSupport: true },
        },
        workspace: { diagnostics: { refreshSupport: true } },
        window: { workDoneProgress: true },
      },
    });
    await connection.sendNotification('initialized', {});
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'sfz', version: 0, text },
    });
    const pull = () => connection.sendRequest('textDocument/diagnostic', { textDocument: { uri } });
    await pull();
    await measured;
    await pull();
    const milliseconds: number[] = [];
    let version = 0;
    for (const stroke of keystrokesIn(text, 140)) {
      version++;
      milliseconds.push(
        await timeOf(async () => {
          await connection.sendNotification('textDocument/didChange', {
            textDocument: { uri, version },
            contentChanges: [stroke],
          });
          await pull();
        }),
      );
    }
    add(
      quantilesRow(
        'Keystroke in 10,000 regions to findings, over the protocol',
        milliseconds.slice(40),
        'p95 ≤ 16 ms',
      ),
    );
    await measureRequests(add, text, (method, params) =>
      connection.sendRequest(method, { textDocument: { uri }, ...params }),
    );
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
  } finally {
    connection.dispose();
    child.kill();
  }
}

/** Requests about places all over a large document, which nothing has changed since it was read. */
async function measureRequests(
  add: AddRow,
  text: string,
  request: (method: string, params: object) => Promise<unknown>,
): Promise<void> {
  const starts = [0, ...Array.from(text.matchAll(/\n/g), ({ index }) => index + 1)];
  const placeOf = (offset: number) => {
    const line = starts.findLastIndex((start) => start <= offset);
    return { position: { line, character: offset - starts[line] } };
  };
  const places = Array.from({ length: 60 }, (_, at) => {
    const from = Math.floor((text.length * ((at * 37) % 61)) / 61);
    return placeOf(Math.max(0, text.indexOf('volume=', from)) + 2);
  });
  for (const [what, method] of [
    ['Completion', 'textDocument/completion'],
    ['Hover', 'textDocument/hover'],
    ['Symbols', 'textDocument/documentSymbol'],
    ['Formatting', 'textDocument/formatting'],
  ] as const) {
    const times: number[] = [];
    const options = { insertSpaces: true, tabSize: 2 };
    for (const place of places) times.push(await timeOf(() => request(method, { ...place, options })));
    add(quantilesRow(`${what} in 10,000 regions, over the protocol`, times.slice(10), 'p95 ≤ 20 ms'));
  }
}
