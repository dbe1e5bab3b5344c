import type { FileReader } from '../../model/files';
import { ByteWindow, fourCharacters } from '../headers/byteWindow';
import type { FrameLayout } from '../headers/frameLayout';
import { readWavLayout } from '../headers/wav';
import { readAiffLayout } from './aiffLayout';

/** The first read: enough for every header of an ordinary file. */
const headBytes = 4096;

const waveForms: ReadonlySet<number> = new Set(['RIFF', 'RIFX', 'RF64', 'BW64'].map(fourCharacters));
const aiffForms: ReadonlySet<number> = new Set(['AIFF', 'AIFC'].map(fourCharacters));

/**
 * Where the audio of an open sample file lies; the caller closes the file. `undefined` where it cannot be read or is
 * of a kind that is not decoded: WAV and AIFF files of PCM, floating-point numbers and G.711 are.
 */
export async function readFrameLayout(reader: FileReader): Promise<FrameLayout | undefined> {
  try {
    const head = await reader.read(0, Math.min(headBytes, reader.size));
    if (head.length < 12) return undefined;
    const bytes = new ByteWindow(reader, head);
    const [container, form] = [bytes.identifier(0), bytes.identifier(8)];
    if (waveForms.has(container) && form === fourCharacters('WAVE')) return await readWavLayout(bytes);
    if (container === fourCharacters('FORM') && aiffForms.has(form)) return await readAiffLayout(bytes);
    return undefined;
  } catch {
    return undefined;
  }
}
