import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WaveFile } from 'wavefile';
import { openAudio } from '../../../server/audio/decode/openAudio';
import { measureLoopSeam } from '../../../server/audio/measure/loops/loopSeam';
import type { FileReader } from '../../../server/model/files';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { toneAt } from '../../unit/audio/measure/tones';
import { compare } from '../compare';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

const files = 20;
const rate = 44100;
const seconds = 2;
const start = rate / 2;
/** As many frames around each end of a loop as a seam is measured in. */
const reach = Math.round(0.27 * rate);

/** Loop seams of 20 stereo files in 24 bits, smooth ones and bad ones, against reading and decoding the same frames. */
export async function measureLoops(add: AddRow): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'loop-bench-'));
  try {
    const sounds = Array.from({ length: files }, (_, number) => {
      const period = 80 + 13 * number;
      const path = join(folder, `${number}.wav`);
      const { samples } = toneAt(69 + 12 * Math.log2(rate / period / 440), { seconds });
      const frames = samples.map((value) => Math.round(value * 0x7fffff));
      const wav = new WaveFile();
      wav.fromScratch(2, rate, '24', [frames, frames]);
      writeFileSync(path, wav.toBuffer());
      return { path, period, end: start + period * Math.floor((0.8 * rate) / period) - 1 };
    });
    const each =
      (work: (reader: FileReader, sound: (typeof sounds)[number]) => Promise<unknown>) => async () => {
        for (const sound of sounds) {
          const reader = await nodeFiles.open(sound.path);
          if (!reader) throw new Error(`${sound.path} cannot be opened.`);
          await work(reader, sound);
          await reader.close();
        }
      };
    const bare = each(async (reader, { end }) => {
      const audio = await openAudio(reader);
      await audio?.read(start - reach, 2 * reach);
      await audio?.read(end - reach, 2 * reach);
      await audio?.close();
    });
    const seams = (moved: number, isAudible: boolean) =>
      each(async (reader, { period, end }) => {
        const seam = await measureLoopSeam(reader, start, end + Math.round(moved * period));
        if (seam?.isAudible !== isAudible) throw new Error('A seam was judged otherwise.');
      });
    const rounds = { warmUp: 3, pairs: 15 };
    const smooth = await compare(seams(0, false), bare, rounds);
    add(
      ratioRow(
        `Smooth loop seams of ${files} WAV files, to reading and decoding the same frames`,
        smooth,
        '',
      ),
    );
    const bad = await compare(seams(0.4, true), bare, rounds);
    add(ratioRow('Bad ones, with better points and a crossfade', bad, ''));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
