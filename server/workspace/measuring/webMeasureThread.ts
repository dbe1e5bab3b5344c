import type { Files } from '../../model/files';
import type { MeasureThread, ThreadEvents } from './measurePool';
import { MeasurePool } from './measurePool';
import type { Measurer } from './measurer';
import { sameThreadMeasurer } from './measurer';

/** What a worker says when it takes orders. */
export const threadIsReady = 'ready';

/** What a browser's host gives to measure with. */
export interface WebMeasureHost {
  files: Files;
  /** The address of the script that a worker runs; rejects where there is none. */
  script(): Promise<string>;
  /** Gives files to a worker over a port; answers what ends that. */
  giveFiles(port: MessagePort): () => void;
}

/** Workers at the most, as each may hold a long sample. */
const mostWorkers = 4;
/** Milliseconds that the first worker is given to load. */
const loadTime = 15_000;

/**
 * Measures in web workers, one fewer than this machine has cores, where the host lets this worker start workers of its
 * own; in the same thread where it does not.
 */
export function webMeasurer(host: WebMeasureHost): Measurer {
  const width = Math.max(1, Math.min(mostWorkers, navigator.hardwareConcurrency - 1));
  let chosen: Promise<Measurer> | undefined;
  return {
    width,
    async measure(path, requests, signal) {
      chosen ??= chooseMeasurer(host, width);
      return (await chosen).measure(path, requests, signal);
    },
    async close() {
      await (await chosen)?.close();
    },
  };
}

async function chooseMeasurer(host: WebMeasureHost, width: number): Promise<Measurer> {
  const address = await host.script().catch(() => undefined);
  const first = address === undefined ? undefined : await loadedWorker(address);
  if (address === undefined || !first) return sameThreadMeasurer(host.files);
  let spare: Worker | undefined = first;
  return new MeasurePool((events) => {
    const worker = spare ?? newWorker(address);
    spare = undefined;
    return threadOf(worker, host, events);
  }, width);
}

/** A worker that has loaded its script; `undefined` where the host lets none run. */
async function loadedWorker(address: string): Promise<Worker | undefined> {
  let worker: Worker | undefined;
  try {
    const started = newWorker(address);
    worker = started;
    await new Promise<void>((resolve, reject) => {
      started.onmessage = ({ data }) => data === threadIsReady && resolve();
      started.onerror = (event) => {
        // An error that nobody stops goes on to the editor, which takes it for one of the server.
        event.preventDefault();
        reject();
      };
      setTimeout(reject, loadTime);
    });
    return worker;
  } catch {
    worker?.terminate();
    return undefined;
  }
}

/** A worker may be made of a script of the same origin only, but may then fetch scripts of others (HTML Standard, workers). */
function newWorker(address: string): Worker {
  const source = new Blob([`importScripts(${JSON.stringify(address)})`], { type: 'text/javascript' });
  const url = URL.createObjectURL(source);
  return new Worker(url);
}

function threadOf(worker: Worker, host: WebMeasureHost, events: ThreadEvents): MeasureThread {
  const { port1, port2 } = new MessageChannel();
  const stopGiving = host.giveFiles(port1);
  let isEnded = false;
  const end = () => {
    if (isEnded) return;
    isEnded = true;
    worker.terminate();
    stopGiving();
    port1.close();
    events.ended();
  };
  worker.onmessage = ({ data }) => {
    if (data !== threadIsReady) events.answered(data);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    end();
  };
  worker.postMessage(null, [port2]);
  return {
    send: (message) => worker.postMessage(message),
    setBusy: () => {},
    end: async () => end(),
  };
}
