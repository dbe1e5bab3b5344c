import type { Page } from 'playwright-core';
import { sharedBrowser } from '../../unit/webview/browser';

/** A graph of Web Audio: a buffer, how it is read, and what it goes through. */
export interface Graph {
  /** Channels of the buffer, and its rate. */
  channels: readonly Float32Array[];
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
  async render({ channels, ...graph }: Graph): Promise<[Float32Array, Float32Array]> {
    const sent: SentGraph = { ...graph, channels: channels.map(base64Of) };
    // Written as text: the page has types that this project's tests do not.
    const script = `(${renderInPage.toString()})(${JSON.stringify(sent)})`;
    const [left, right] = await this.#page.evaluate<[string, string]>(script);
    return [floatsOf(left), floatsOf(right)];
  }

  async close(): Promise<void> {
    await this.#page.close();
  }
}

/** Values go to the page and back as text: the browser's driver takes its time over each number of a list. */
type SentGraph = Omit<Graph, 'channels'> & { channels: string[] };

function base64Of(values: Float32Array): string {
  return Buffer.from(values.buffer, values.byteOffset, values.byteLength).toString('base64');
}

function floatsOf(base64: string): Float32Array {
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  return new Float32Array(bytes.buffer);
}

/** Runs in the page; knows nothing from outside of itself. */
async function renderInPage(graph: SentGraph): Promise<string[]> {
  const { OfflineAudioContext: Context } = globalThis as unknown as {
    OfflineAudioContext: new (channels: number, frames: number, rate: number) => OfflineContext;
  };
  const context = new Context(2, Math.round(graph.seconds * graph.outputRate), graph.outputRate);
  const channels = graph.channels.map(
    (text) => new Float32Array(Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0)).buffer),
  );
  const buffer = context.createBuffer(channels.length, channels[0].length, graph.rate);
  for (const [number, values] of channels.entries()) buffer.copyToChannel(values, number);
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
  return [0, 1].map((channel) => {
    const bytes = new Uint8Array(rendered.getChannelData(channel).buffer);
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  });
}
