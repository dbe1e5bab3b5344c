import type { FileReader } from '../../model/files';
import type { Chunk } from './chunks';
import { FontError } from './fontError';

/** Bytes of a record in each list, in the order in which the lists stand (SoundFont Technical Specification 2.04, section 7). */
export const recordBytes = {
  phdr: 38,
  pbag: 4,
  pmod: 10,
  pgen: 4,
  inst: 22,
  ibag: 4,
  imod: 10,
  igen: 4,
  shdr: 46,
} as const;

export type ListName = keyof typeof recordBytes;

const listNames = Object.keys(recordBytes) as ListName[];

/** What each list holds, in the words of messages. */
export const listContents: Readonly<Record<ListName, string>> = {
  phdr: 'presets',
  pbag: 'zones of presets',
  pmod: 'modulators of presets',
  pgen: 'generators of presets',
  inst: 'instruments',
  ibag: 'zones of instruments',
  imod: 'modulators of instruments',
  igen: 'generators of instruments',
  shdr: 'samples',
};

/** Positions are numbers of 16 bits, so that no list can use more than these records and its last one. */
const mostRecords = 65536 + 1;

/** A list of records of one length. */
export interface RecordList {
  name: ListName;
  view: DataView;
  count: number;
  stride: number;
  /** Whole records that the file was cut short by. */
  missing: number;
}

/** The nine lists that say what a font consists of, read whole: together they take less than 15 MB. */
export async function readRecordLists(
  reader: FileReader,
  chunks: readonly Chunk[],
): Promise<Record<ListName, RecordList>> {
  const known = chunks.filter(({ name }) => listNames.includes(name as ListName));
  const lists: Partial<Record<ListName, RecordList>> = {};
  for (const [at, name] of listNames.entries()) {
    const chunk = known[at];
    if (chunk?.name !== name) throw new FontError(missingOrMisplaced(name, known));
    lists[name] = await readList(reader, name, chunk);
  }
  return lists as Record<ListName, RecordList>;
}

function missingOrMisplaced(name: ListName, known: readonly Chunk[]): string {
  const other = known.find((chunk) => chunk.name === name);
  return other
    ? `the list of ${listContents[name]} (${name}, at byte ${other.start}) is out of order; the lists stand as ${listNames.join(', ')}`
    : `the list of ${listContents[name]} (${name}) is missing`;
}

async function readList(reader: FileReader, name: ListName, chunk: Chunk): Promise<RecordList> {
  const stride = recordBytes[name];
  const { start, size, statedSize } = chunk;
  const place = `the list of ${listContents[name]} (${name}, at byte ${start})`;
  if (statedSize % stride !== 0)
    throw new FontError(`${place} has ${statedSize} bytes, which is no multiple of ${stride}`);
  if (statedSize / stride > mostRecords)
    throw new FontError(
      `${place} has ${statedSize / stride} records; a font can use ${mostRecords} at the most`,
    );
  if (size < statedSize && name !== 'shdr')
    throw new FontError(`the file is cut short: ${place} has ${size} of its ${statedSize} bytes`);
  const count = Math.floor(size / stride);
  const bytes = await reader.read(start, count * stride);
  if (bytes.length < count * stride)
    throw new FontError(`${place} could not be read whole; the file may have changed in the meantime`);
  return {
    name,
    view: new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength),
    count,
    stride,
    missing: statedSize / stride - count,
  };
}

const nameBytes = 20;

/** The name of 20 bytes at the start of a record; what is no printable character becomes a space. */
export function nameAt({ view, stride }: RecordList, record: number): string {
  let name = '';
  for (let at = record * stride; at < record * stride + nameBytes; at++) {
    const code = view.getUint8(at);
    if (code === 0) break;
    name += code < 32 || (code >= 127 && code < 160) ? ' ' : String.fromCharCode(code);
  }
  return name.trim();
}
