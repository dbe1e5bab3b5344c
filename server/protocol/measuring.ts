import type { ClientCapabilities, Connection, WorkDoneProgressServerReporter } from 'vscode-languageserver';
import type { Files } from '../model/files';
import type { CacheStorage } from '../workspace/measuring/measureCache';
import { MeasureCache } from '../workspace/measuring/measureCache';
import { Measurements } from '../workspace/measuring/measurements';
import type { Measurer } from '../workspace/measuring/measurer';

/** How the host of the server measures samples. */
export interface MeasuringHost {
  measurer(files: Files): Measurer;
  /** Keeps what was measured in a folder that the client names; missing where the host keeps nothing. */
  storage?(folder: string): CacheStorage;
}

/** Milliseconds in which news of measures are gathered before findings are worked out anew. */
const gathered = 800;
/** Milliseconds that measuring may take without being shown, and between two steps of what is shown. */
const unseen = 500;
const stepTime = 250;

/**
 * Measures samples in the background: shows how far it is where the client can, lets the person end it there, and tells
 * now and then whom it concerns.
 */
export class Measuring {
  readonly measurements: Measurements;
  readonly #connection: Connection;
  readonly #host: MeasuringHost;
  readonly #tell: (owners: ReadonlySet<unknown>) => void;
  #news = new Set<unknown>();
  #newsTimer: NodeJS.Timeout | undefined;
  #canShow = false;
  #shown: Promise<WorkDoneProgressServerReporter> | undefined;
  #showTimer: NodeJS.Timeout | undefined;
  #lastStep = 0;

  /** `tell` is told of the owners of which more is known. */
  constructor(
    connection: Connection,
    files: Files,
    host: MeasuringHost,
    tell: (owners: ReadonlySet<unknown>) => void,
  ) {
    this.#connection = connection;
    this.#host = host;
    this.#tell = tell;
    this.measurements = new Measurements(files, { measurer: host.measurer(files), inBackground: true });
    this.measurements.onMeasured = (owners) => this.#measured(owners);
    this.measurements.onProgress = () => this.#progressed();
  }

  /** Begins: what the client can do. */
  start({ window }: ClientCapabilities): void {
    this.#canShow = window?.workDoneProgress === true;
  }

  /** What is kept over restarts in a folder. */
  cacheIn(folder: string): MeasureCache | undefined {
    const storage = this.#host.storage?.(folder);
    return storage && new MeasureCache(storage);
  }

  async stop(): Promise<void> {
    clearTimeout(this.#newsTimer);
    clearTimeout(this.#showTimer);
    await this.measurements.close();
  }

  #measured(owners: ReadonlySet<unknown>): void {
    for (const owner of owners) this.#news.add(owner);
    this.#newsTimer ??= setTimeout(() => this.#tellNews(), gathered);
  }

  #tellNews(): void {
    clearTimeout(this.#newsTimer);
    this.#newsTimer = undefined;
    const news = this.#news;
    this.#news = new Set();
    if (news.size > 0) this.#tell(news);
  }

  #progressed(): void {
    if (!this.measurements.isWorking) {
      clearTimeout(this.#showTimer);
      this.#showTimer = undefined;
      const shown = this.#shown;
      this.#shown = undefined;
      shown?.then((one) => one.done()).catch(() => {});
      // The last news need not be waited for.
      this.#tellNews();
    } else if (this.#shown) this.#step(this.#shown);
    else if (this.#canShow) this.#showTimer ??= setTimeout(() => this.#show(), unseen);
  }

  #show(): void {
    this.#showTimer = undefined;
    const shown = this.#connection.window.createWorkDoneProgress();
    this.#shown = shown;
    shown.then(
      (one) => {
        one.begin('Measuring samples', 0, undefined, true);
        one.token.onCancellationRequested(() => this.measurements.decline());
        this.#step(shown);
      },
      () => {
        this.#canShow = false;
      },
    );
  }

  #step(shown: Promise<WorkDoneProgressServerReporter>): void {
    if (Date.now() - this.#lastStep < stepTime) return;
    this.#lastStep = Date.now();
    const { done, total } = this.measurements.progress;
    const percent = Math.floor((100 * done) / Math.max(1, total));
    shown.then((one) => one.report(percent, `${done} of ${total}`)).catch(() => {});
  }
}
