import type { Page } from 'playwright-core';
import { sharedBrowser } from '../unit/webview/browser';

/** A graph of Web Audio: a buffer, how it is read, and what it goes through. */
export interface Graph {
  /** Channels of the buffer, and its rate. */
  channels: readonly (readonly number[])[];
  rate: number;
  seconds: number;
  outputRate: number;
  playbackRate?: number;
  /** Frames; the end is the first frame that is not played. */
  loop?: { start: number; end: number };
  gain?: number;
  pan?: number;
  biquad?: { type: BiquadFilterType; hertz: number; quality?: number; gainDb?: number };
}

type BiquadFilterType = 'lowpass' | 'highpass' | 'bandpass' | 'notch' | 'peaking' | 'lowshelf' | 'highshelf';

/** What is used here of the types of a page (W3C, Web Audio API), which the tests do not have. */
interface Node {
  connect(next: Node): void;
}
interface Parameter {
  value: number;
}
interface AudioData {
  copyToChannel(values: Float32Array, channel: number): void;
  getChannelData(channel: number): Float32Array;
}
interface OfflineContext {
  destination: Node;
  createBuffer(channels: number, frames: number, rate: number): AudioData;
  createBufferSource(): Node & {
    buffer: AudioData;
    playbackRate: Parameter;
    loop: boolean;
    loopStart: number;
    loopEnd: number;
    start(): void;
  };
  createBiquadFilter(): Node & { type: string; frequency: Parameter; Q: Parameter; gain: Parameter };
  createGain(): Node & { gain: Parameter };
  createStereoPanner(): Node & { pan: Parameter };
  startRendering(): Promise<AudioData>;
}

/** Renders graphs with the Web Audio of Chromium, which has its own ideas of none of this voice. */
export class OfflineAudio {
  readonly #page: Page;

  private constructor(page: Page) {
    this.#page = page;
  }

  static async start(): Promise<OfflineAudio> {
    return new OfflineAudio(await (await sharedBrowser()).newPage());
  }

  /** Left and right of the output. */
  async render(graph: Graph): Promise<[number[], number[]]> {
    // Written as text: the page has types that this project's tests do not.
    const script = `(${renderInPage.toString()})(${JSON.stringify(graph)})`;
    return (await this.#page.evaluate(script)) as [number[], number[]];
  }

  async close(): Promise<void> {
    await this.#page.close();
  }
}

/** Runs in the page; knows nothing from outside of itself. */
async function renderInPage(graph: Graph): Promise<number[][]> {
  const { OfflineAudioContext: Context } = globalThis as unknown as {
    OfflineAudioContext: new (channels: number, frames: number, rate: number) => OfflineContext;
  };
  const context = new Context(2, Math.round(graph.seconds * graph.outputRate), graph.outputRate);
  const buffer = context.createBuffer(graph.channels.length, graph.channels[0].length, graph.rate);
  for (const [number, values] of graph.channels.entries())
    buffer.copyToChannel(Float32Array.from(values), number);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.playbackRate.value = graph.playbackRate ?? 1;
  if (graph.loop) {
    source.loop = true;
    source.loopStart = graph.loop.start / graph.rate;
    source.loopEnd = graph.loop.end / graph.rate;
  }
  let last: Node = source;
  const connect = (node: Node) => {
    last.connect(node);
    last = node;
  };
  if (graph.biquad) {
    const filter = context.createBiquadFilter();
    filter.type = graph.biquad.type;
    filter.frequency.value = graph.biquad.hertz;
    if (graph.biquad.quality !== undefined) filter.Q.value = graph.biquad.quality;
    if (graph.biquad.gainDb !== undefined) filter.gain.value = graph.biquad.gainDb;
    connect(filter);
  }
  if (graph.gain !== undefined) {
    const gain = context.createGain();
    gain.gain.value = graph.gain;
    connect(gain);
  }
  if (graph.pan !== undefined) {
    const panner = context.createStereoPanner();
    panner.pan.value = graph.pan;
    connect(panner);
  }
  last.connect(context.destination);
  source.start();
  const rendered = await context.startRendering();
  return [0, 1].map((channel) => Array.from(rendered.getChannelData(channel)));
}
