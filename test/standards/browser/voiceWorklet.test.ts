import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { play } from '../../unit/sound/playing';
import { hasBrowser, sharedBrowser } from '../../unit/webview/browser';

const rate = 48000;
const root = join(__dirname, '../../..');

const text =
  '<region> sample=a.wav cutoff=2000 fileg_depth=2400 fileg_decay=0.2 pitchlfo_freq=5 pitchlfo_depth=30 pan=30 ampeg_release=0.1\n<region> sample=*saw volume=-12 amp_random=6 lfo1_freq=3 lfo1_pan=50';
const sample = Float32Array.from({ length: rate }, (_, at) => Math.sin(at * at * 1e-5));

/** A processor that plays a note; the program and the player's data are sent to it as they are. */
const processor = `
import { createPlayer } from '${root}/server/playing/player/createPlayer';
import { createVoiceEngine } from '${root}/server/sound/voiceEngine';

class VoiceProcessor extends AudioWorkletProcessor {
  constructor({ processorOptions: { program, playable, sample, quality } }) {
    super();
    this.engine = createVoiceEngine(program, createPlayer(playable, { seed: 1 }), { sampleRate, quality, makesVoicesFirst: true, mostVoices: 16 });
    this.engine.addSample(0, [sample], sampleRate);
    this.engine.noteOn(64, 100);
    this.port.postMessage(this.engine.isCompiled);
  }
  process(_inputs, [[left, right]]) {
    this.engine.process(left, right);
    return true;
  }
}
registerProcessor('voice', VoiceProcessor);
`;

/** What the page needs to make its data: the readers run there too. */
const page = `
import { playableInstrument } from '${root}/server/playing/playable/makePlayable';
import { readSfz } from '${root}/server/sfz/read';
import { soundOf } from '${root}/server/sound/program/soundOf';

window.render = async (text, sample, seconds, rate, quality) => {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const context = new OfflineAudioContext(2, seconds * rate, rate);
  await context.audioWorklet.addModule('/processor.js');
  const node = new AudioWorkletNode(context, 'voice', {
    outputChannelCount: [2],
    processorOptions: { program: soundOf(instrument), playable: playableInstrument(instrument), sample: Float32Array.from(sample), quality },
  });
  node.connect(context.destination);
  const isCompiled = new Promise((done) => { node.port.onmessage = ({ data }) => done(data); });
  const rendered = await context.startRendering();
  return { channels: [0, 1].map((channel) => Array.from(rendered.getChannelData(channel))), isCompiled: await isCompiled };
};
`;

describe('the engine of the voice', () => {
  let folder: string;
  let inputs: string[];
  beforeAll(async () => {
    folder = temporaryFolder('worklet');
    writeFileSync(join(folder, 'processor.ts'), processor);
    writeFileSync(join(folder, 'page.ts'), page);
    const { metafile } = await build({
      entryPoints: [join(folder, 'processor.ts'), join(folder, 'page.ts')],
      outdir: folder,
      bundle: true,
      format: 'esm',
      target: 'es2022',
      metafile: true,
      logLevel: 'error',
    });
    const output = Object.entries(metafile.outputs).find(([name]) => name.endsWith('processor.js'));
    inputs = Object.keys(output?.[1].inputs ?? {});
  });

  it('takes no reader, no file and no package with it to the audio thread', () => {
    const own = inputs.filter((path) => !path.endsWith('processor.ts'));
    expect(own.length).toBeGreaterThan(20);
    expect(own.filter((path) => !/(^|\/)server\/(sound|playing)\//.test(path))).toEqual([]);
  });

  // Without its own word a policy refuses compiled code (W3C CSP Level 3, section 4.4).
  it.skipIf(!hasBrowser).each([
    { quality: 'reference', policy: "script-src 'self'", isCompiled: false },
    { quality: 'live', policy: "script-src 'self' 'wasm-unsafe-eval'", isCompiled: true },
    { quality: 'live', policy: "script-src 'self'", isCompiled: false },
  ] as const)(
    'sounds in an AudioWorklet of Chromium as it does here, %o',
    async ({ quality, policy, isCompiled }) => {
      const files: Record<string, string> = {
        '/': '<!doctype html><script type="module" src="/page.js"></script>',
        '/page.js': readFileSync(join(folder, 'page.js'), 'utf8'),
        '/processor.js': readFileSync(join(folder, 'processor.js'), 'utf8'),
      };
      const server = createServer((request, response) => {
        const type = request.url?.endsWith('.js') ? 'text/javascript' : 'text/html';
        const headers = { 'Content-Type': type, 'Content-Security-Policy': policy };
        response.writeHead(200, headers).end(files[request.url ?? ''] ?? '');
      });
      await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
      const tab = await (await sharedBrowser()).newPage();
      try {
        await tab.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
        await vi.waitFor(
          async () => expect(await tab.evaluate('typeof window.render')).toBe('function'),
          10_000,
        );
        const call = `render(${JSON.stringify(text)}, ${JSON.stringify([...sample])}, 0.5, ${rate}, '${quality}')`;
        const rendered: { channels: [number[], number[]]; isCompiled: boolean } = await tab.evaluate(call);
        const [left, right] = rendered.channels;
        expect(rendered.isCompiled).toBe(isCompiled);
        const own = play(text, 0.5, {
          samples: { 'a.wav': { channels: [sample], rate } },
          key: 64,
          velocity: 100,
          quality,
          mayCompile: isCompiled,
        });
        // Web Audio keeps single precision.
        const worst = (theirs: number[], ours: Float64Array) =>
          Math.max(...theirs.map((value, at) => Math.abs(value - Math.fround(ours[at]))));
        expect(Math.max(...left)).toBeGreaterThan(0.1);
        expect(worst(left, own.left)).toBeLessThan(1e-6);
        expect(worst(right, own.right)).toBeLessThan(1e-6);
      } finally {
        await tab.close();
        server.close();
      }
    },
    60_000,
  );
});
