// The rules of the format, chunk by chunk, apart from what the project reads and writes itself. Sections are those of the
// SoundFont Technical Specification 2.04; RIFF by Multimedia Programming Interface and Data Specifications 1.0 (1991).

interface Place {
  start: number;
  size: number;
}

const order = ['phdr', 'pbag', 'pmod', 'pgen', 'inst', 'ibag', 'imod', 'igen', 'shdr'];
const strides: Record<string, number> = {
  phdr: 38,
  pbag: 4,
  pmod: 10,
  pgen: 4,
  inst: 22,
  ibag: 4,
  imod: 10,
  igen: 4,
  shdr: 46,
};

/** Lowest and highest values of generators in instruments, by number (section 8.1.3), written out by hand. */
const bounds: Record<number, [number, number]> = {
  5: [-12000, 12000],
  6: [-12000, 12000],
  7: [-12000, 12000],
  8: [1500, 13500],
  9: [0, 960],
  10: [-12000, 12000],
  11: [-12000, 12000],
  13: [-960, 960],
  15: [0, 1000],
  16: [0, 1000],
  17: [-500, 500],
  21: [-12000, 5000],
  22: [-16000, 4500],
  23: [-12000, 5000],
  24: [-16000, 4500],
  25: [-12000, 5000],
  26: [-12000, 8000],
  27: [-12000, 5000],
  28: [-12000, 8000],
  29: [0, 1000],
  30: [-12000, 8000],
  31: [-1200, 1200],
  32: [-1200, 1200],
  33: [-12000, 5000],
  34: [-12000, 8000],
  35: [-12000, 5000],
  36: [-12000, 8000],
  37: [0, 1440],
  38: [-12000, 8000],
  39: [-1200, 1200],
  40: [-1200, 1200],
  46: [0, 127],
  47: [0, 127],
  48: [0, 1440],
  51: [-120, 120],
  52: [-99, 99],
  54: [0, 3],
  56: [0, 1200],
  57: [1, 127],
  58: [0, 127],
};

/** Generators that a preset cannot have. */
const instrumentOnly = [0, 1, 2, 3, 4, 12, 45, 46, 47, 50, 53, 54, 57, 58];

/** What breaks the published rules in the bytes of a SoundFont, as sentences; empty where nothing does. */
export function brokenRules(bytes: Uint8Array): string[] {
  const broken: string[] = [];
  const rule = (holds: boolean, text: string) => {
    if (!holds && broken.length < 50) broken.push(text);
  };
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const letters = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  const chunksIn = (start: number, end: number): [string, Place][] => {
    const found: [string, Place][] = [];
    for (let at = start; at < end; ) {
      const size = view.getUint32(at + 4, true);
      rule(size % 2 === 0, `chunk ${letters(at)} at ${at} has an odd size`);
      rule(at + 8 + size <= end, `chunk ${letters(at)} at ${at} goes on past its list`);
      found.push([letters(at), { start: at + 8, size }]);
      at += 8 + size;
    }
    return found;
  };
  rule(letters(0) === 'RIFF' && letters(8) === 'sfbk', 'it does not begin with RIFF and sfbk');
  rule(view.getUint32(4, true) === bytes.length - 8, 'the size in the header is not that of the file');
  const lists = chunksIn(12, bytes.length);
  rule(
    lists.map(([, { start }]) => letters(start)).join() === 'INFO,sdta,pdta',
    'the lists are not INFO, sdta, pdta',
  );
  const [info, sdta, pdta] = lists.map(
    ([, { start, size }]) => new Map(chunksIn(start + 4, start + size)),
  ) as [Map<string, Place>, Map<string, Place>, Map<string, Place>];
  checkInfo(info, view, bytes, rule);
  rule([...pdta.keys()].join() === order.join(), 'the lists of pdta are not the nine in their order');
  for (const name of order)
    rule(
      (pdta.get(name)?.size ?? 1) % (strides[name] as number) === 0,
      `${name} is no multiple of ${strides[name]}`,
    );
  if (broken.length > 0) return broken;
  const count = (name: string) => (pdta.get(name)?.size ?? 0) / (strides[name] as number);
  const at = (name: string, record: number) =>
    (pdta.get(name)?.start ?? 0) + record * (strides[name] as number);
  const smpl = sdta.get('smpl') as Place;
  const minor = view.getUint16((info.get('ifil') as Place).start + 2, true);
  const low = sdta.get('sm24');
  if (low) {
    const frames = smpl.size / 2;
    rule(minor >= 4, 'sm24 stands in a file before 2.04');
    rule(low.size === frames + (frames % 2), 'sm24 has not one byte a frame');
  }
  for (const [head, field, bag, gen, mod, last] of [
    ['phdr', 24, 'pbag', 'pgen', 'pmod', 41],
    ['inst', 20, 'ibag', 'igen', 'imod', 53],
  ] as const) {
    rule(count(head) >= 2, `${head} has fewer than two records`);
    const terminal = count(head) - 1;
    rule(
      view.getUint16(at(head, terminal) + field, true) === count(bag) - 1,
      `the end of ${head} is not that of ${bag}`,
    );
    for (const [offset, list] of [
      [0, gen],
      [2, mod],
    ] as const) {
      let before = 0;
      for (let record = 0; record < count(bag); record++) {
        const index = view.getUint16(at(bag, record) + offset, true);
        rule(index >= before, `positions in ${bag} fall at ${record}`);
        before = index;
      }
      rule(before === count(list) - 1, `the end of ${bag} is not that of ${list}`);
    }
    for (const [list, size] of [
      [gen, 4],
      [mod, 10],
    ] as const)
      rule(
        bytes
          .subarray(at(list, count(list) - 1), at(list, count(list) - 1) + size)
          .every((byte) => byte === 0),
        `the last record of ${list} is not empty`,
      );
    const names = new Set<string>();
    for (let item = 0; item < terminal; item++) {
      const name = nameAt(bytes, at(head, item));
      rule(name !== undefined && name !== '', `name ${item} of ${head} is empty or not ended by a zero`);
      rule(!names.has(name ?? ''), `name "${name}" of ${head} is not unique`);
      names.add(name ?? '');
      const first = view.getUint16(at(head, item) + field, true);
      const end = view.getUint16(at(head, item + 1) + field, true);
      rule(end > first, `item ${item} of ${head} has no zones`);
      for (let zone = first; zone < end; zone++) checkZone(zone, zone === first && end - first > 1);
    }
    checkModulators(mod);

    function checkZone(zone: number, mayBeGlobal: boolean): void {
      const start = view.getUint16(at(bag, zone), true);
      const stop = view.getUint16(at(bag, zone + 1), true);
      const seen: number[] = [];
      for (let record = start; record < stop; record++) {
        const operator = view.getUint16(at(gen, record), true);
        const value = view.getInt16(at(gen, record) + 2, true);
        rule(!seen.includes(operator), `generator ${operator} stands twice in zone ${zone} of ${bag}`);
        if (operator === 43) rule(seen.length === 0, `the key range of zone ${zone} of ${bag} is not first`);
        if (operator === 44)
          rule(
            seen.every((one) => one === 43),
            `the velocity range of zone ${zone} of ${bag} is not behind the key range`,
          );
        if (operator === 43 || operator === 44)
          rule(
            (value & 255) <= value >> 8 && value >> 8 <= 127,
            `a range of zone ${zone} of ${bag} is upside down`,
          );
        else if (operator === last) {
          rule(record === stop - 1, `zone ${zone} of ${bag} goes on behind generator ${last}`);
          rule(
            (value & 0xffff) < count(last === 53 ? 'shdr' : 'inst') - 1,
            `zone ${zone} of ${bag} names what is not there`,
          );
        } else if (last === 41)
          rule(!instrumentOnly.includes(operator), `a preset has generator ${operator}`);
        else {
          const [low, high] = bounds[operator] ?? [-32768, 32767];
          rule(value >= low && value <= high, `generator ${operator} is ${value} in zone ${zone} of ${bag}`);
        }
        seen.push(operator);
      }
      const isGlobal = seen.at(-1) !== last;
      rule(
        !isGlobal || mayBeGlobal,
        `zone ${zone} of ${bag} ends without generator ${last} and is not the first of several`,
      );
      if (isGlobal) rule(!seen.includes(54), `the global zone ${zone} of ${bag} has sample modes`);
    }
  }
  checkSamples();
  return broken;

  function checkModulators(list: string): void {
    for (let record = 0; record < count(list) - 1; record++) {
      for (const offset of [0, 6]) {
        const source = view.getUint16(at(list, record) + offset, true);
        const index = source & 127;
        // Section 8.2.1: controllers that may not be sources; general sources that exist.
        if (source & 128)
          rule(
            ![0, 6, 98, 99, 100, 101].includes(index) && !(index >= 32 && index <= 63) && index < 120,
            `controller ${index} moves a modulator`,
          );
        else rule([0, 2, 3, 10, 13, 14, 16].includes(index), `source ${index} of a modulator does not exist`);
        rule(source >> 10 <= 3, 'a modulator has a curve that does not exist');
      }
    }
  }

  function checkSamples(): void {
    const names = new Set<string>();
    let before = 0;
    for (let sample = 0; sample < count('shdr') - 1; sample++) {
      const from = at('shdr', sample);
      const name = nameAt(bytes, from);
      const [start, end, loopStart, loopEnd, rate] = [20, 24, 28, 32, 36].map((offset) =>
        view.getUint32(from + offset, true),
      ) as [number, number, number, number, number];
      const [link, type] = [view.getUint16(from + 42, true), view.getUint16(from + 44, true)];
      rule(
        name !== undefined && name !== '' && !names.has(name),
        `sample name "${name}" is empty or not unique`,
      );
      names.add(name ?? '');
      rule(
        start >= before && end - start >= 48,
        `sample ${name} is shorter than 48 frames or overlaps another`,
      );
      rule(
        loopStart >= start + 8 && loopEnd <= end - 8 && loopEnd - loopStart >= 32,
        `the loop of ${name} is too short or too near to an end`,
      );
      rule(rate >= 400 && rate <= 50000, `the rate of ${name} is ${rate}`);
      rule(view.getUint8(from + 40) <= 127, `the root key of ${name} is above 127`);
      for (let frame = end; frame < end + 46; frame++)
        rule(view.getInt16(smpl.start + 2 * frame, true) === 0, `behind ${name} there are not 46 zeros`);
      rule(2 * (end + 46) <= smpl.size, `${name} goes on past the audio`);
      rule([1, 2, 4].includes(type), `the type of ${name} is ${type}`);
      if (type === 1) rule(link === 0, `the mono sample ${name} has a link`);
      else {
        const other = at('shdr', link);
        rule(
          link < count('shdr') - 1 && view.getUint16(other + 42, true) === sample,
          `the link of ${name} does not lead back`,
        );
        rule(view.getUint16(other + 44, true) + type === 6, `${name} is linked to the same side`);
        rule(
          view.getUint32(other + 24, true) - view.getUint32(other + 20, true) === end - start,
          `the sides of ${name} differ in length`,
        );
      }
      before = end;
    }
  }
}

function checkInfo(
  info: Map<string, Place>,
  view: DataView,
  bytes: Uint8Array,
  rule: (holds: boolean, text: string) => void,
): void {
  for (const name of ['ifil', 'isng', 'INAM']) rule(info.has(name), `${name} is missing`);
  for (const [name, { start, size }] of info) {
    if (name === 'ifil') {
      rule(size === 4, 'ifil has not 4 bytes');
      rule(
        view.getUint16(start, true) === 2 && [1, 4].includes(view.getUint16(start + 2, true)),
        'the version is not 2.01 or 2.04',
      );
      continue;
    }
    rule(
      ['isng', 'INAM', 'ICRD', 'IENG', 'IPRD', 'ICOP', 'ICMT', 'ISFT'].includes(name),
      `${name} is no text of a font`,
    );
    rule(size <= (name === 'ICMT' ? 65536 : 256), `${name} is too long`);
    const text = bytes.subarray(start, start + size);
    const zero = text.indexOf(0);
    rule(
      zero > 0 && zero >= size - 2 && text.subarray(0, zero).every((byte) => byte >= 32 && byte < 127),
      `${name} is no ASCII text ended by one or two zeros`,
    );
  }
}

/** A name of 20 bytes; `undefined` where it is not ended by zeros. */
function nameAt(bytes: Uint8Array, at: number): string | undefined {
  const field = bytes.subarray(at, at + 20);
  const zero = field.indexOf(0);
  if (zero < 0 || field.subarray(zero).some((byte) => byte !== 0)) return undefined;
  return String.fromCharCode(...field.subarray(0, zero));
}
