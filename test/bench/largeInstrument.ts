/** How a large instrument is laid out as text. */
export type Layout = 'opcode-per-line' | 'region-per-line' | 'xml';

const noteNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const velocityBounds = [1, 31, 58, 84, 107, 128];
const layerNames = ['pp', 'p', 'mf', 'f', 'ff'];
const zones = 29;
const zoneWidth = 3;
const lowestKey = 21;
const roundRobins = 4;
const layers = layerNames.length;
const playedWays = 24;
/** Frames of each sample, past which no offset or loop of the instrument goes. */
export const sampleFrames = 6000;

type Values = [name: string, value: string | number][];

/**
 * The text of an instrument with a number of regions, made the way large instruments are: ways of playing behind
 * keyswitches and programs, in each of them velocity layers as groups, in each of them zones three keys wide with
 * round robins. No two regions answer the same note, so a check of overlaps has nothing to report.
 */
export function largeInstrument(regions: number, layout: Layout): string {
  const out = new Writer(layout);
  let left = regions;
  out.open('global', [
    ['ampeg_attack', 0.002],
    ['ampeg_release', 0.45],
    ['amp_veltrack', 86],
    ['bend_up', 200],
    ['bend_down', -200],
    ['sw_lokey', 0],
    ['sw_hikey', playedWays - 1],
  ]);
  for (let way = 0; left > 0; way++) {
    const program = Math.floor(way / playedWays);
    out.open('master', [
      ['master_label', `Way ${way + 1} of playing`],
      ['sw_last', way % playedWays],
      ['loprog', program],
      ['hiprog', program],
    ]);
    for (let layer = 0; layer < layers && left > 0; layer++) {
      out.open('group', [
        ['group_label', `${layerNames[layer]} ${way + 1}`],
        ['lovel', velocityBounds[layer]],
        ['hivel', velocityBounds[layer + 1] - 1],
        ['seq_length', roundRobins],
        ['volume', (layer * 1.5 - 6).toFixed(1)],
      ]);
      for (let zone = 0; zone < zones && left > 0; zone++) {
        for (let robin = 0; robin < roundRobins && left > 0; robin++, left--) {
          out.region(regionValues(way, layer, zone, robin));
        }
      }
      out.close('group');
    }
    out.close('master');
  }
  out.close('global');
  return out.text();
}

function regionValues(way: number, layer: number, zone: number, robin: number): Values {
  const low = lowestKey + zone * zoneWidth;
  const root = low + 1;
  const name = `${noteNames[root % 12]}${Math.floor(root / 12) - 1}`;
  const varied = (way * 7 + layer * 13 + zone * 29 + robin * 31) % 97;
  const values: Values = [
    ['sample', `Samples/Way ${way + 1}/${layerNames[layer]}/${name} take ${robin + 1}.wav`],
    ['lokey', low],
    ['hikey', low + zoneWidth - 1],
    ['pitch_keycenter', root],
    ['seq_position', robin + 1],
    ['volume', (varied / 16 - 3).toFixed(2)],
    ['tune', (varied % 23) - 11],
    ['offset', varied * 3],
  ];
  if (zone % 3 !== 0) {
    const start = 2000 + varied * 7;
    values.push(['loop_mode', 'loop_continuous'], ['loop_start', start], ['loop_end', start + 1717 + varied]);
  }
  if (zone % 5 === 0) values.push(['pan', varied - 48]);
  return values;
}

class Writer {
  readonly #layout: Layout;
  readonly #lines: string[] = [];

  constructor(layout: Layout) {
    this.#layout = layout;
    if (layout === 'xml') this.#lines.push('<?xml version="1.0" encoding="UTF-8"?>', '<instrument>');
    else this.#lines.push('// A large instrument for measuring', '');
  }

  open(name: string, values: Values): void {
    if (this.#layout === 'xml') this.#lines.push(`<${name} ${attributes(values)}>`);
    else this.#lines.push('', `<${name}>`, ...values.map(([one, value]) => `${one}=${value}`));
  }

  close(name: string): void {
    if (this.#layout === 'xml') this.#lines.push(`</${name}>`);
  }

  region(values: Values): void {
    const written = values.map(([one, value]) => `${one}=${value}`);
    if (this.#layout === 'xml') this.#lines.push(`    <region ${attributes(values)}/>`);
    else if (this.#layout === 'region-per-line') this.#lines.push(`<region> ${written.join(' ')}`);
    else this.#lines.push('<region>', ...written, '');
  }

  text(): string {
    if (this.#layout === 'xml') this.#lines.push('</instrument>');
    // Joining by way of bytes gives one flat string, as a file read from the disk would be.
    return Buffer.from(`${this.#lines.join('\n')}\n`, 'latin1').toString('latin1');
  }
}

function attributes(values: Values): string {
  return values.map(([name, value]) => `${name}="${value}"`).join(' ');
}
