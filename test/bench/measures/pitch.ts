import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WaveFile } from 'wavefile';
import { readFrameLayout } from '../../../server/audio/decode/readFrameLayout';
import { readFrames } from '../../../server/audio/decode/readFrames';
import { measureSamplePitch } from '../../../server/audio/measure/measureSample';
import type { FileReader } from '../../../server/model/files';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { toneAt } from '../../unit/audio/measure/tones';
import { compare } from '../compare';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

const seconds = 2;

/** Pitch of 20 stereo files of two seconds in 24 bits, against opening, reading and decoding the same frames. */
export async function measurePitches(add: AddRow): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pitch-bench-'));
  try {
    const paths = Array.from({ length: 20 }, (_, number) => {
      const { samples, sampleRate } = toneAt(30 + 3.1 * number, { seconds, decays: true });
      const frames = samples.map((value) => Math.round(value * 0x7fffff));
      const wav = new WaveFile();
      wav.fromScratch(2, sampleRate, '24', [frames, frames]);
      const path = join(folder, `${number}.wav`);
      writeFileSync(path, wav.toBuffer());
      return path;
    });
    const each = (work: (reader: FileReader) => Promise<unknown>) => async () => {
      for (const path of paths) {
        const reader = await nodeFiles.open(path);
        if (!reader) throw new Error(`${path} cannot be opened.`);
        await work(reader);
        await reader.close();
      }
    };
    const compared = await compare(
      each(measureSamplePitch),
      each(async (reader) => {
        const layout = await readFrameLayout(reader);
        if (layout) await readFrames(reader, layout, 0, seconds * layout.sampleRate);
      }),
      { warmUp: 3, pairs: 15 },
    );
    add(ratioRow('Pitch of 20 WAV files, to reading and decoding the same 2 s', compared, '≤ 10'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
