import type { FileReader } from '../../model/files';
import { byCount } from '../../model/wording/counted';
import type { FontInstrument, Preset, SampleHeader, SoundFont, Zone } from '../font';
import { SampleType } from '../font';
import type { Chunk } from './chunks';
import { chunksIn } from './chunks';
import { FontError } from './fontError';
import { formStart, headerBytes, isSoundFont } from './isSoundFont';
import { Problems } from './problems';
import type { ZoneLists } from './readZones';
import { checkBags, readFontZones } from './readZones';
import type { ListName, RecordList } from './recordLists';
import { listContents, nameAt, readRecordLists } from './recordLists';

/** What came of reading a file as a SoundFont: its parts without the audio, or a sentence on why it is none. */
export type FontReading = { kind: 'font'; font: SoundFont } | { kind: 'unreadable'; reason: string };

/** Texts about a font are short; more than this of them is not read. */
const mostInfoBytes = 1 << 18;

/**
 * Reads an open SoundFont of version 2 without its audio; the caller closes the file. Reads headers and lists alone, under
 * 15 MB whatever the file says. Where the rules are broken so that the meaning is in doubt, the answer is a reason that
 * names the place; never an exception. Of a file that was cut short within its last list, the samples, that is given
 * which is whole.
 *
 * Layout and reasons to reject: SoundFont Technical Specification 2.04, sections 3 to 7 and 10.
 */
export async function readFont(reader: FileReader): Promise<FontReading> {
  try {
    return { kind: 'font', font: await readParts(reader) };
  } catch (error) {
    const reason =
      error instanceof FontError
        ? `This SoundFont cannot be read: ${error.message}.`
        : 'The file could not be read from its disk.';
    return { kind: 'unreadable', reason };
  }
}

async function readParts(reader: FileReader): Promise<SoundFont> {
  const head = await reader.read(0, headerBytes);
  if (!isSoundFont(head)) throw new FontError('it does not begin with RIFF and sfbk');
  const problems = new Problems();
  const chunks = await chunksIn(reader, headerBytes, reader.size);
  checkSize(reader, new DataView(head.buffer, head.byteOffset).getUint32(4, true) + formStart, chunks);
  const lists = await readRecordLists(reader, await chunksOf(reader, chunks, 'pdta'));
  const version = await readInfo(reader, chunks, problems);
  const pool = await readPool(reader, chunks, version, problems);
  const samples = readSamples(lists.shdr, problems);
  return {
    ...version,
    ...pool,
    samples,
    ...readItems(lists, samples.length, problems),
    problems: problems.list(),
  };
}

/** The lists stand last, so a file that is cut short before them has lost all; within the samples, the last, some are whole. */
function checkSize({ size }: FileReader, stated: number, chunks: readonly Chunk[]): void {
  if (stated === size || (stated === size + 1 && size % 2 === 1)) return;
  if (stated < size)
    throw new FontError(
      `its header says ${stated} bytes, but the file has ${size}; the last ${size - stated} belong to nothing`,
    );
  const last = chunks.at(-1);
  if (last?.name === 'pdta') return;
  throw new FontError(
    `the file is cut short: it has ${size} of ${stated} bytes and ends${last ? ` within the part ${last.name}` : ''}, before the lists of presets and samples`,
  );
}

async function chunksOf(reader: FileReader, chunks: readonly Chunk[], name: string): Promise<Chunk[]> {
  const list = chunks.find((chunk) => chunk.name === name);
  if (!list) throw new FontError(`the part ${name} is missing`);
  return chunksIn(reader, list.start, list.start + list.size);
}

async function readInfo(
  reader: FileReader,
  chunks: readonly Chunk[],
  problems: Problems,
): Promise<Pick<SoundFont, 'major' | 'minor' | 'info'>> {
  const texts = new Map<string, string>();
  let version = { major: 2, minor: 1 };
  const ifil = 'the version (ifil)';
  const parts = chunks.some(({ name }) => name === 'INFO') ? await chunksOf(reader, chunks, 'INFO') : [];
  if (!parts.some(({ name }) => name === 'ifil')) throw new FontError(`${ifil} is missing`);
  for (const { name, start, size, statedSize } of parts) {
    const bytes = await reader.read(start, Math.min(size, mostInfoBytes));
    if (name === 'ifil') {
      if (statedSize !== 4 || bytes.length !== 4)
        throw new FontError(`${ifil} at byte ${start} has ${statedSize} bytes instead of 4`);
      const view = new DataView(bytes.buffer, bytes.byteOffset);
      version = { major: view.getUint16(0, true), minor: view.getUint16(2, true) };
    } else if (/^[A-Z]{4}$|^i[a-z]{3}$/.test(name)) texts.set(name, textOf(bytes));
  }
  if (version.major !== 2)
    throw new FontError(`it is of version ${version.major}.${version.minor}; versions 2.00 to 2.04 are read`);
  for (const [name, what] of [
    ['isng', 'sound engine'],
    ['INAM', 'name'],
  ] as const)
    if (!texts.has(name)) problems.add(`The file does not say its ${what} (${name}).`);
  return { ...version, info: texts };
}

function textOf(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder('latin1').decode(end < 0 ? bytes : bytes.subarray(0, end)).trim();
}

const lowBytesSince = 4;

async function readPool(
  reader: FileReader,
  chunks: readonly Chunk[],
  { minor }: { minor: number },
  problems: Problems,
): Promise<Pick<SoundFont, 'pool' | 'lowBytesStart'>> {
  const parts = await chunksOf(reader, chunks, 'sdta');
  const smpl = parts.find(({ name }) => name === 'smpl');
  const sm24 = parts.find(({ name }) => name === 'sm24');
  if (!smpl) return { pool: { startByte: 0, frames: 0 }, lowBytesStart: undefined };
  const frames = Math.floor(smpl.size / 2);
  const pool = { startByte: smpl.start, frames };
  if (!sm24) return { pool, lowBytesStart: undefined };
  const isWhole =
    sm24.size === sm24.statedSize && (sm24.size === frames || sm24.size === frames + (frames % 2));
  if (minor >= lowBytesSince && isWhole) return { pool, lowBytesStart: sm24.start };
  problems.add(
    isWhole
      ? `The low bytes of 24-bit audio (sm24) are not used: the file is of version 2.${String(minor).padStart(2, '0')}, which has none.`
      : `The low bytes of 24-bit audio (sm24) are not used: there are ${sm24.size} for ${frames} frames.`,
  );
  return { pool, lowBytesStart: undefined };
}

function readSamples(list: RecordList, problems: Problems): SampleHeader[] {
  const { view, stride, count, missing } = list;
  const all = count + missing - 1;
  if (missing > 0)
    problems.add(
      count < all
        ? `The file is cut short: of ${all} samples, ${count} ${byCount(count, 'is', 'are')} listed; zones of the others are left out.`
        : 'The file is cut short after its last sample: only the end of the list of samples is missing.',
    );
  // The last record only marks the end; a list that is cut short has lost it.
  return Array.from({ length: missing > 0 ? count : Math.max(0, count - 1) }, (_, record) => {
    const at = record * stride;
    return {
      name: nameAt(list, record),
      start: view.getUint32(at + 20, true),
      end: view.getUint32(at + 24, true),
      loopStart: view.getUint32(at + 28, true),
      loopEnd: view.getUint32(at + 32, true),
      rate: view.getUint32(at + 36, true),
      rootKey: view.getUint8(at + 40),
      correctionCents: view.getInt8(at + 41),
      link: view.getUint16(at + 42, true),
      type: view.getUint16(at + 44, true),
    };
  });
}

function readItems(
  lists: Record<ListName, RecordList>,
  sampleCount: number,
  problems: Problems,
): Pick<SoundFont, 'presets' | 'instruments'> {
  const { phdr, pbag, pmod, pgen, inst, ibag, imod, igen, shdr } = lists;
  const presetLists: ZoneLists = { bags: pbag, generators: pgen, modulators: pmod, level: 'preset' };
  const instrumentLists: ZoneLists = { bags: ibag, generators: igen, modulators: imod, level: 'instrument' };
  checkBags(presetLists);
  checkBags(instrumentLists);
  const instruments = bagRanges(inst, 20, ibag).map(([first, end], record): FontInstrument => {
    const read = readFontZones(instrumentLists, first, end, problems);
    const { zones, ...rest } = { name: nameAt(inst, record), ...read };
    return { ...rest, zones: zonesWithTargets(zones, sampleCount, shdr, rest.name) };
  });
  const presets = bagRanges(phdr, 24, pbag).map(([first, end], record): Preset => {
    const read = readFontZones(presetLists, first, end, problems);
    const at = record * phdr.stride;
    const bank = phdr.view.getUint16(at + 22, true);
    const program = phdr.view.getUint16(at + 20, true);
    const { zones, ...rest } = { name: nameAt(phdr, record), bank, program, ...read };
    return { ...rest, zones: zonesWithTargets(zones, instruments.length, inst, rest.name) };
  });
  return { presets, instruments };
}

/** The first bag and the one past the last of each item; the last record of the list only marks the end. */
function bagRanges(list: RecordList, offset: number, bags: RecordList): [number, number][] {
  const what = `the list of ${listContents[list.name]} (${list.name})`;
  if (list.count < 2) throw new FontError(`${what} is empty`);
  const ranges: [number, number][] = [];
  for (let record = 0; record + 1 < list.count; record++) {
    const first = list.view.getUint16(record * list.stride + offset, true);
    const end = list.view.getUint16((record + 1) * list.stride + offset, true);
    if (end < first) throw new FontError(`in ${what} the zones of number ${record} end before they start`);
    if (end > bags.count - 1)
      throw new FontError(
        `in ${what} number ${record} has zones up to ${end}, and there are ${Math.max(0, bags.count - 1)} in ${bags.name}`,
      );
    ranges.push([first, end]);
  }
  return ranges;
}

function zonesWithTargets(zones: readonly Zone[], count: number, list: RecordList, name: string): Zone[] {
  const wrong = list.missing > 0 ? undefined : zones.find(({ target }) => target >= count);
  if (wrong)
    throw new FontError(
      `a zone of "${name}" names number ${wrong.target} in the list of ${listContents[list.name]} (${list.name}), which has ${count}`,
    );
  return zones.filter(({ target }) => target < count);
}

/** Whether a sample lies in the memory of a sound card, which no file holds. */
export function isRomSample({ type }: SampleHeader): boolean {
  return (type & SampleType.rom) !== 0;
}
