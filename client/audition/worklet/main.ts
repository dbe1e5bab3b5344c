import type { FromVoice, ToVoice } from '../voiceMessages';
import { Audition } from './audition';

// Web Audio API, section 1.32, "The AudioWorkletGlobalScope Interface": what the types of a page leave out.
declare const sampleRate: number;
declare const registerProcessor: (
  name: string,
  processor: new (options: ProcessorOptions) => unknown,
) => void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
interface ProcessorOptions {
  processorOptions: { mostBytes: number };
}

/** The node on the audio thread that plays what the page tells it. */
class VoiceProcessor extends AudioWorkletProcessor {
  readonly #audition: Audition;

  constructor({ processorOptions }: ProcessorOptions) {
    super();
    this.#audition = new Audition(sampleRate, processorOptions.mostBytes, (message: FromVoice) =>
      this.port.postMessage(message),
    );
    this.port.onmessage = ({ data }: MessageEvent<ToVoice>) => this.#audition.take(data);
  }

  process(_inputs: unknown, [[left, right]]: [[Float32Array, Float32Array]]): boolean {
    this.#audition.process(left, right ?? left);
    return true;
  }
}

registerProcessor('zonewright-voice', VoiceProcessor);
