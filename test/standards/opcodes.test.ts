import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { OpcodeFacts } from '../../server/model/opcodes/opcode';
import { listOpcodes, resolveOpcode } from '../../server/model/opcodes/resolve';
import { defaultNumberOf } from '../../server/model/opcodes/values';

/*
 * Source of every number here: the public documentation of the open SFZ format (CC0 1.0), opcode pages, which carry no
 * edition, as they were in November 2026.
 * Typed in by hand, not taken from the catalogue.
 */
type Row = [
  name: string,
  level: string,
  unit: string | undefined,
  min: number | undefined,
  max: number | undefined,
  byDefault: number | undefined,
];

const none = undefined;

const published: Row[] = [
  ['lokey', 'v1', none, 0, 127, 0],
  ['hikey', 'v1', none, 0, 127, 127],
  ['key', 'v1', none, 0, 127, none],
  ['lovel', 'v1', none, 1, 127, 1],
  ['hivel', 'v1', none, 1, 127, 127],
  ['pitch_keycenter', 'v1', none, 0, 127, 60],
  ['pitch_keytrack', 'v1', 'cents', -1200, 1200, 100],
  ['tune', 'v1', 'cents', -100, 100, 0],
  ['transpose', 'v1', none, -127, 127, 0],
  ['volume', 'v1', 'dB', -144, 6, 0],
  ['pan', 'v1', '%', -100, 100, 0],
  ['width', 'v1', '%', -100, 100, 100],
  ['amp_veltrack', 'v1', '%', -100, 100, 100],
  ['amp_velcurve_64', 'v1', none, 0, 1, none],
  ['amp_random', 'v1', 'dB', 0, 24, 0],
  ['rt_decay', 'v1', 'dB', 0, 200, 0],
  ['delay', 'v1', 'seconds', 0, 100, 0],
  ['offset', 'v1', 'sample units', 0, 4294967296, 0],
  ['loop_start', 'v1', 'sample units', 0, 4294967296, 0],
  ['loop_end', 'v1', 'sample units', 0, 4294967296, 0],
  ['lochan', 'v1', none, 1, 16, 1],
  ['hichan', 'v1', none, 1, 16, 16],
  ['lobend', 'v1', none, -8192, 8192, -8192],
  ['hibend', 'v1', none, -8192, 8192, 8192],
  ['locc64', 'v1', none, 0, 127, 0],
  ['hicc64', 'v1', none, 0, 127, 127],
  ['lorand', 'v1', none, 0, 1, 0],
  ['hirand', 'v1', none, 0, 1, 1],
  ['seq_length', 'v1', none, 1, 100, 1],
  ['seq_position', 'v1', none, 1, 100, 1],
  ['on_locc64', 'v1', none, 0, 127, -1],
  ['lobpm', 'v1', 'bpm', 0, 500, 0],
  ['bend_up', 'v1', 'cents', -9600, 9600, 200],
  ['bend_down', 'v1', 'cents', -9600, 9600, -200],
  ['resonance', 'v1', 'dB', 0, 40, 0],
  ['fil_keytrack', 'v1', 'cents', 0, 1200, 0],
  ['ampeg_release', 'v1', 'seconds', 0, 100, 0.001],
  ['ampeg_sustain', 'v1', '%', 0, 100, 100],
  ['fileg_depth', 'v1', 'cents', -12000, 12000, 0],
  ['pitchlfo_freq', 'v1', 'Hz', 0, 20, 0],
  ['eq1_bw', 'v1', 'octaves', 0.001, 4, 1],
  ['note_offset', 'v2', 'semitones', -127, 127, 0],
  ['octave_offset', 'v2', 'octaves', -10, 10, 0],
  ['group', 'v1', none, -2147483648, 2147483647, 0],
  ['sw_default', 'v2', none, 0, 127, none],
  ['v064', 'v2', none, -1, 1, none],
  ['effect1', 'v1', '%', 0, 100, 0],
  ['amplitude', 'extension', '%', 0, 100, 100],
  ['off_time', 'extension', none, none, none, 0.006],
];

const publishedOptions: [name: string, options: string[]][] = [
  ['loop_mode', ['no_loop', 'one_shot', 'loop_continuous', 'loop_sustain']],
  ['trigger', ['attack', 'release', 'first', 'legato', 'release_key']],
  ['off_mode', ['fast', 'normal', 'time']],
  ['xf_velcurve', ['gain', 'power']],
  ['sw_vel', ['current', 'previous']],
  ['direction', ['forward', 'reverse']],
  ['phase', ['normal', 'invert']],
];

describe('the catalogue against the public documentation of the open SFZ format (CC0 1.0)', () => {
  it.each(published)('%s', (name, level, unit, min, max, byDefault) => {
    const facts = resolveOpcode(name)!.facts;
    expect([facts.level, facts.unit, facts.min, facts.max, defaultNumberOf(facts)]).toEqual([
      level,
      unit,
      min,
      max,
      byDefault,
    ]);
  });

  it.each(publishedOptions)('options of %s', (name, options) => {
    expect([...resolveOpcode(name)!.facts.options].sort()).toEqual([...options].sort());
  });

  it('reads the velocity curve default as a note, and the filter as off by default', () => {
    expect(resolveOpcode('cutoff')!.facts.defaultText).toBe('filter disabled');
    expect(resolveOpcode('amp_velcurve_1')!.facts.defaultText).toContain('amp_veltrack');
  });
});

/* The whole published table: tab-separated, one opcode a line under a line of headings. Its source stands in data/README.md. */
const table = new URL('data/sfz-opcodes.tsv', import.meta.url);

describe('the catalogue against the whole published table', () => {
  const lines = readFileSync(table, 'utf8').trimEnd().split('\n').slice(1);
  const byPattern = new Map(listOpcodes().map((facts) => [facts.pattern, facts]));
  const numeric = (text: string) => (/^-?[\d.]+$/.test(text) ? Number(text) : undefined);
  const bare = (text: string | undefined) => text?.replace(/[,\s]/g, '');

  it('has every opcode with its facts, in the same words', () => {
    expect(lines.length).toBe(710);
    for (const line of lines) {
      const [
        pattern = '',
        level,
        ,
        category,
        type,
        unit,
        min = '',
        max = '',
        byDefault,
        options = '',
        modulates,
      ] = line.split('\t');
      const facts = byPattern.get(pattern);
      expect(facts, pattern).toBeDefined();
      const { options: ours, defaultText, ...rest } = facts as OpcodeFacts;
      expect(rest, pattern).toMatchObject({ level, category });
      expect([rest.type, rest.unit, rest.min, rest.max, rest.modulates, bare(defaultText)], pattern).toEqual([
        type || undefined,
        unit === 'percent' ? '%' : unit || undefined,
        numeric(min),
        numeric(max),
        modulates || undefined,
        bare(byDefault || undefined),
      ]);
      expect(ours, pattern).toEqual(options.split('|').filter((option) => option !== ''));
    }
  });

  it('takes every published alias for the opcode that it stands beside, or for a further one of its kind', () => {
    for (const line of lines) {
      const [pattern = '', ...cells] = line.split('\t');
      for (const alias of (cells[10] ?? '').split('|').filter(Boolean)) {
        const found = [resolveOpcode(alias.replace(/N+|[XY]/g, '7'))?.facts.pattern];
        expect([pattern, alias], alias).toEqual(expect.arrayContaining(found));
      }
    }
  });

  it('lists nothing beside the table but second filters, further waveforms and embedded data', () => {
    const inTable = new Set(lines.map((line) => line.split('\t')[0]));
    const beside = listOpcodes().filter(({ pattern }) => !inTable.has(pattern));
    for (const { pattern } of beside) {
      expect(pattern).toMatch(
        /^(cutoff2|resonance2|fil2_)|^lfoN_(cutoff2|resonance2|waveX|offsetX|ratioX|scaleX)|data$|^name$/,
      );
    }
  });
});
