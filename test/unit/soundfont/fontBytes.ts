import { chunk, text, u16, u32 } from '../audio/byteFiles';

/** A generator: its number, and its value as a signed number or as two bytes, the low one first. */
export type TestGenerator = [operator: number, value: number | [low: number, high: number]];
/** A modulator: source, destination, amount, source of the amount, transform. */
export type TestModulator = [number, number, number, number?, number?];

export interface TestZone {
  gens?: TestGenerator[];
  mods?: TestModulator[];
}

export interface TestSample {
  name: string;
  frames: number[];
  /** Low bytes of 24-bit frames. */
  low?: number[];
  /** First frame of the loop, and one past its last, counted in the sample. */
  loop?: [number, number];
  rate?: number;
  root?: number;
  correction?: number;
  link?: number;
  type?: number;
}

export interface TestFont {
  version?: [number, number];
  info?: [name: string, value: string][];
  presets: { name: string; bank?: number; program?: number; zones: TestZone[] }[];
  instruments: { name: string; zones: TestZone[] }[];
  samples: TestSample[];
  /** Takes the chunks of `pdta`, of `sdta` and of `INFO` before they are put together. */
  change?: (parts: Parts) => void;
}

export interface Parts {
  info: [name: string, body: number[]][];
  sdta: [name: string, body: number[]][];
  pdta: [name: string, body: number[]][];
}

const silentFrames = 46;

function named(name: string): number[] {
  return [...text(name.slice(0, 20)), ...new Array<number>(20 - Math.min(20, name.length)).fill(0)];
}

function signed(value: number): number[] {
  return u16(value & 0xffff);
}

function generatorBytes([operator, value]: TestGenerator): number[] {
  return [...u16(operator), ...(typeof value === 'number' ? signed(value) : value)];
}

function modulatorBytes([
  source,
  destination,
  amount,
  amountSource = 0,
  transform = 0,
]: TestModulator): number[] {
  return [...u16(source, destination), ...signed(amount), ...u16(amountSource, transform)];
}

/** The lists of zones, generators and modulators of presets or instruments, and where the zones of each start. */
function zoneLists(items: readonly { zones: TestZone[] }[]) {
  const [bags, gens, mods]: [number[], number[], number[]] = [[], [], []];
  const starts: number[] = [];
  let [bag, gen, mod] = [0, 0, 0];
  for (const { zones } of items) {
    starts.push(bag);
    for (const zone of zones) {
      bags.push(...u16(gen, mod));
      gens.push(...(zone.gens ?? []).flatMap(generatorBytes));
      mods.push(...(zone.mods ?? []).flatMap(modulatorBytes));
      gen += zone.gens?.length ?? 0;
      mod += zone.mods?.length ?? 0;
      bag++;
    }
  }
  starts.push(bag);
  bags.push(...u16(gen, mod));
  return { bags, gens: [...gens, ...u32(0)], mods: [...mods, ...new Array<number>(10).fill(0)], starts };
}

/**
 * The bytes of a font, laid out by hand from the SoundFont Technical Specification 2.04, sections 3 to 7, apart from
 * what the project writes itself.
 */
export function fontBytes(font: TestFont): Uint8Array {
  const presets = zoneLists(font.presets);
  const instruments = zoneLists(font.instruments);
  const [pool, low]: [number[], number[]] = [[], []];
  const headers: number[] = [];
  for (const one of font.samples) {
    const start = pool.length / 2;
    pool.push(...one.frames.flatMap(signed), ...new Array<number>(2 * silentFrames).fill(0));
    low.push(...one.frames.map((_, at) => one.low?.[at] ?? 0), ...new Array<number>(silentFrames).fill(0));
    const [loopStart, loopEnd] = one.loop ?? [8, one.frames.length - 8];
    headers.push(
      ...named(one.name),
      ...u32(start, start + one.frames.length, start + loopStart, start + loopEnd),
    );
    headers.push(...u32(one.rate ?? 44100), one.root ?? 60, (one.correction ?? 0) & 255);
    headers.push(...u16(one.link ?? 0, one.type ?? 1));
  }
  const parts: Parts = {
    info: [
      ['ifil', u16(...(font.version ?? [2, 1]))],
      ['isng', [...text('EMU8000'), 0]],
      ['INAM', [...text('Test'), 0, 0]],
      ...(font.info ?? []).map(([name, value]): [string, number[]] => [name, [...text(value), 0]]),
    ],
    sdta: [
      ['smpl', pool],
      ...(font.samples.some((one) => one.low) ? [['sm24', low] as [string, number[]]] : []),
    ],
    pdta: [
      [
        'phdr',
        [
          ...font.presets.flatMap(({ name, bank = 0, program = 0 }, at) => [
            ...named(name),
            ...u16(program, bank, presets.starts[at] as number),
            ...u32(0, 0, 0),
          ]),
          ...named('EOP'),
          ...u16(0, 0, presets.starts.at(-1) as number),
          ...u32(0, 0, 0),
        ],
      ],
      ['pbag', presets.bags],
      ['pmod', presets.mods],
      ['pgen', presets.gens],
      [
        'inst',
        [
          ...font.instruments.flatMap(({ name }, at) => [
            ...named(name),
            ...u16(instruments.starts[at] as number),
          ]),
          ...named('EOI'),
          ...u16(instruments.starts.at(-1) as number),
        ],
      ],
      ['ibag', instruments.bags],
      ['imod', instruments.mods],
      ['igen', instruments.gens],
      ['shdr', [...headers, ...named('EOS'), ...new Array<number>(26).fill(0)]],
    ],
  };
  font.change?.(parts);
  const list = (kind: string, chunks: [string, number[]][]) =>
    chunk('LIST', [...text(kind), ...chunks.flatMap(([name, body]) => chunk(name, body))]);
  const body = [...list('INFO', parts.info), ...list('sdta', parts.sdta), ...list('pdta', parts.pdta)];
  return new Uint8Array([...text('RIFF'), ...u32(body.length + 4), ...text('sfbk'), ...body]);
}

/** Frames of a tone of so many frames a period. */
export function tone(frames: number, period: number, level = 10000): number[] {
  return Array.from(
    { length: frames },
    (_, at) => Math.round(level * Math.sin((2 * Math.PI * at) / period)) + 0,
  );
}

/** A font of one preset, one instrument and one sample, whose instrument zone says what is given. */
export function simpleFont(
  gens: TestGenerator[] = [],
  rest: Partial<TestFont> & { mods?: TestModulator[]; presetGens?: TestGenerator[] } = {},
): Uint8Array {
  const { mods = [], presetGens = [], ...font } = rest;
  return fontBytes({
    presets: [{ name: 'Reed', zones: [{ gens: [...presetGens, [41, 0]] }] }],
    instruments: [{ name: 'Reed', zones: [{ gens: [...gens, [53, 0]], mods }] }],
    samples: [{ name: 'Reed C4', frames: tone(200, 20), loop: [40, 160] }],
    ...font,
  });
}
