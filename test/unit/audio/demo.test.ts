import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { temporaryFolder } from '../../temporaryFolder';

const demo = join(import.meta.dirname, '../../../samples-demo');
const folder = temporaryFolder('demo-samples');

const make = (target: string) =>
  execFileSync(process.execPath, [join(demo, 'make.mjs'), join(folder, target)], { encoding: 'utf8' });

function filesIn(target: string): Map<string, string> {
  const root = join(folder, target);
  const names = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.wav'),
  );
  return new Map(names.sort().map((name) => [name, readFileSync(join(root, name)).toString('base64')]));
}

interface Sampler {
  dwMIDIUnityNote: number;
  dwMIDIPitchFraction: number;
  loops: { dwType: number; dwStart: number; dwEnd: number; dwPlayCount: number }[];
}

function wav(name: string) {
  const path = join(folder, 'one/millrace-chimes/Samples', name);
  const file = new wavefile.WaveFile(new Uint8Array(readFileSync(path)));
  return {
    sampler: file.smpl as Sampler,
    samples: file.getSamples(true),
    rate: (file.fmt as { sampleRate: number }).sampleRate,
  };
}

const read = (name: string) => readFileSync(join(demo, name), 'utf8');

/** The regions of the SFZ form, taken apart with the least that its plain style needs. */
function sfzRegions(): Record<string, string>[] {
  const regions: Record<string, string>[] = [];
  let group: Record<string, string> = {};
  let into = group;
  for (const [, header, name, value] of read('millrace-chimes/millrace-chimes.sfz')
    .replace(/\/\/.*/g, '')
    .matchAll(/<(\w+)>|(\w+)=(\S+)/g)) {
    if (header === 'region') {
      into = { ...group };
      regions.push(into);
    } else if (header) {
      group = {};
      into = group;
    } else into[name] = value;
  }
  return regions;
}

const semitones: Record<string, number> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };

/** A note name's key number where middle C, 60, is in the given octave. */
function keyOf(note: string, middle: number): number {
  const [, letter, sharp, octave] = /^([a-g])(#?)(-?\d)$/i.exec(note) ?? [];
  return (
    60 +
    12 * (Number(octave) - middle) +
    (semitones[(letter ?? '').toLowerCase()] ?? Number.NaN) +
    (sharp ? 1 : 0)
  );
}

describe('demo samples', () => {
  const first = make('one');
  const second = make('two');

  it('come out the same every time and are not written again', () => {
    const count = filesIn('one').size;
    expect(count).toBeGreaterThan(35);
    expect(filesIn('two')).toEqual(filesIn('one'));
    expect(first).toContain(`${count} files, ${count} written, 0 unchanged`);
    expect(second).toBe(first);
    expect(make('one')).toContain(`${count} files, 0 written, ${count} unchanged`);
  });

  it('carry the root key, tuning and loop that the instrument gives them', () => {
    for (const region of sfzRegions()) {
      const { sampler, samples } = wav(region.sample);
      expect(sampler.dwMIDIUnityNote).toBe(keyOf(region.pitch_keycenter, 4));
      // 0x80000000 is 50 cents; the instrument tunes back by as much.
      expect((sampler.dwMIDIPitchFraction / 0x80000000) * 50).toBeCloseTo(-Number(region.tune ?? 0), 6);
      if (region.loop_end === undefined) {
        expect(sampler.loops).toEqual([]);
        continue;
      }
      const loop = sampler.loops[0];
      expect(sampler.loops.length).toBe(1);
      expect(loop).toMatchObject({ dwType: 0, dwPlayCount: 0 });
      expect([loop?.dwStart, loop?.dwEnd]).toEqual([Number(region.loop_start), Number(region.loop_end)]);
      // What follows the loop is what it starts with: it closes without a seam.
      const start = loop?.dwStart ?? 0;
      const end = loop?.dwEnd ?? 0;
      expect(samples.slice(end + 1, end + 401)).toEqual(samples.slice(start, start + 400));
    }
  });

  it('sound at their root key (equal temperament, ISO 16)', () => {
    for (const region of sfzRegions()) {
      const { sampler, samples, rate } = wav(region.sample);
      const cents = (sampler.dwMIDIPitchFraction / 0x80000000) * 50;
      const strength = (off: number) => {
        const hertz = 440 * 2 ** ((sampler.dwMIDIUnityNote - 69) / 12 + (cents + off) / 1200);
        let [real, imaginary] = [0, 0];
        samples.forEach((value, frame) => {
          real += value * Math.cos((2 * Math.PI * hertz * frame) / rate);
          imaginary += value * Math.sin((2 * Math.PI * hertz * frame) / rate);
        });
        return Math.hypot(real, imaginary);
      };
      const right = strength(0);
      for (const off of [-1200, -50, -15, 15, 50, 1200]) expect(right).toBeGreaterThan(strength(off));
    }
  });
});

describe('demo instrument', () => {
  const parsed = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    isArray: (name) => name === 'region',
  }).parse(read('millrace-chimes/millrace-chimes.instrument.xml'));

  it('is the same in SFZ and in XML', () => {
    const groups = parsed.instrument.global.group as { region: Record<string, string>[] }[];
    const regions = groups.flatMap(({ region, ...group }) => region.map((own) => ({ ...group, ...own })));
    expect(regions).toEqual(sfzRegions());
  });

  it('is the same in the table, whose middle C is C3', () => {
    const [heading, ...rows] = read('millrace-chimes/zones.tsv').trimEnd().split('\n');
    expect(heading?.split('\t').length).toBe(13);
    const zones = rows.map((row) => {
      const [sample, group, take, root, low, high, lowVel, highVel, tune, volume, pan, start, end] =
        row.split('\t');
      const keys = [root, low, high].map((note) => keyOf(note ?? '', 3));
      return [sample, group, take, ...keys, lowVel, highVel, tune, volume, pan, start, end];
    });
    expect(zones).toEqual(
      sfzRegions().map((region) => [
        region.sample,
        region.group_label,
        region.seq_position ?? '',
        ...[region.pitch_keycenter, region.lokey, region.hikey].map((note) => keyOf(note ?? '', 4)),
        region.lovel ?? '1',
        region.hivel ?? '127',
        region.tune ?? '0',
        region.volume,
        region.pan ?? '0',
        region.loop_start ?? '',
        region.loop_end ?? '',
      ]),
    );
  });

  it('answers every key from C3 to C7 at every velocity, once for each take', () => {
    const regions = sfzRegions();
    const between = (value: number, low: number, high: number) => value >= low && value <= high;
    for (let key = 48; key <= 96; key++) {
      for (let velocity = 1; velocity <= 127; velocity++) {
        const answering = regions
          .filter((region) => between(key, keyOf(region.lokey, 4), keyOf(region.hikey, 4)))
          .filter((region) => between(velocity, Number(region.lovel ?? 1), Number(region.hivel ?? 127)))
          .map((region) => `${region.sw_last} ${region.seq_position ?? 1}`);
        expect(answering.sort()).toEqual(['c#2 1', 'c2 1', 'c2 2']);
      }
    }
  });
});

describe('planted faults', () => {
  const names = readdirSync(join(demo, 'faults'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.(sfz|xml)$/.test(name),
  );

  it.each(names)('%s says what it holds and where', (name) => {
    const lines = read(`faults/${name}`).split('\n');
    const marks = lines.flatMap((line, number) => {
      const found = /planted: ([a-z-]+) at (?:"([^"]+)"|'([^']+)')/.exec(line);
      return found ? [{ code: found[1], quoted: found[2] ?? found[3], next: lines[number + 1] }] : [];
    });
    expect(marks.length).toBeGreaterThan(0);
    for (const { code, quoted, next } of marks) {
      expect(next).toContain(quoted);
      if (!name.startsWith('cycle')) expect(name.startsWith(`${code}.`)).toBe(true);
    }
  });
});
