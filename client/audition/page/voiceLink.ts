import type { FromVoice, ToVoice } from '../voiceMessages';

/** Bytes of sample audio that are held; with what is on its way, playing all of an instrument of 1 GB takes under 400 MB. */
const mostBytes = 225e6;

/** The way to the audio thread of a page. */
export class VoiceLink {
  readonly #context: AudioContext;
  readonly #node: AudioWorkletNode;

  private constructor(context: AudioContext, node: AudioWorkletNode) {
    this.#context = context;
    this.#node = node;
  }

  /** Starts the audio thread; fails where the page may make no sound. */
  static async start(receive: (message: FromVoice) => void): Promise<VoiceLink> {
    const context = new AudioContext({ latencyHint: 'interactive' });
    // The extension's own files are refused as worklets, addresses that the page makes are not.
    const answer = await fetch(new URL('./voice.js', import.meta.url));
    const address = URL.createObjectURL(new Blob([await answer.text()], { type: 'text/javascript' }));
    try {
      await context.audioWorklet.addModule(address);
    } finally {
      URL.revokeObjectURL(address);
    }
    const node = new AudioWorkletNode(context, 'zonewright-voice', {
      numberOfInputs: 0,
      outputChannelCount: [2],
      processorOptions: { mostBytes },
    });
    node.port.onmessage = ({ data }: MessageEvent<FromVoice>) => receive(data);
    node.connect(context.destination);
    await context.resume();
    return new VoiceLink(context, node);
  }

  send(message: ToVoice): void {
    const transfer = message.type === 'audio' ? message.channels.map(({ buffer }) => buffer) : [];
    this.#node.port.postMessage(message, transfer);
  }

  async close(): Promise<void> {
    this.#node.disconnect();
    await this.#context.close();
  }
}
