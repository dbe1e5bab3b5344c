import { describe, expect, it } from 'vitest';
import { declaredTypes } from '../../../../server/table/cells/literals/declaredTypes';
import { constantsOf } from '../../../../server/table/cells/literals/sourceConstants';
import { detect } from '../../../../server/workspace/notations/detect';
import { regions } from '../tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
const keys = ['sample', 'lokey', 'hikey', 'pitch_keycenter'];
const lines = (...all: string[]) => all.join('\n');

// How these languages declare types and constants is their common use (from memory).
describe('constants in source text', () => {
  it.each([
    [
      'C, by the fields of a type and a comment',
      lines(
        '/* harp; tune is in semitones */',
        '#include <stdint.h>',
        'typedef struct { const char *wav; int root, key_lo, key_hi; float tune; } zone_t;',
        'static const zone_t zones[] = {',
        '  { "a.wav", 45, 40, 50, -0.05f },',
        '  { "b.wav", 55, 51, 60, 1.0f },',
        '  { NULL, 0, 0, 0, 0 }',
        '};',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'C, with names in each of them',
      lines(
        '#define COUNT 2',
        'const struct zone zones[COUNT] = {',
        '  [0] = { .file = "a.wav", .lo = 40, .hi = 50, .root = 45 },',
        '  [1] = { .file = "b.wav", .lo = 0x33, .hi = 60, .root = 55 },',
        '};',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'Java',
      lines(
        'package org.example;',
        'public final class Zones {',
        '  record Zone(String file, int rootKey, int lowKey, int highKey) {}',
        '  static final List<Zone> ALL = List.of(',
        '    new Zone("a.wav", 45, 40, 50),',
        '    new Zone("b.wav", 55, 51, 60)',
        '  );',
        '}',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'Rust',
      lines(
        "pub struct Zone { pub file: &'static str, pub lo: u8 }",
        'pub const ZONES: &[Zone] = &[',
        '  Zone { file: "a.wav", lo: 40u8, hi: 50, root: 45 },',
        '  Zone { file: "b.wav", lo: 51, hi: 60, root: 55 },',
        '];',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'Go',
      lines(
        'package zones',
        'type Zone struct {',
        '\tFile string',
        '\tRoot, Low, High int',
        '}',
        'var Zones = []Zone{',
        '\t{"a.wav", 45, 40, 50},',
        '\t{"b.wav", 55, 51, 60},',
        '}',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'C#',
      lines(
        'namespace Kit {',
        '  static class Table {',
        '    public static readonly Zone[] All = new Zone[] {',
        '      new Zone { Sample = "a.wav", Low = 40, High = 50, Root = 45 },',
        '      new Zone { Sample = "b.wav", Low = 51, High = 60, Root = 55 },',
        '    };',
        '  }',
        '}',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
    [
      'Python',
      lines(
        'class Zone(NamedTuple):',
        '    file: str',
        '    root: int',
        '    low: int',
        '    high: int',
        '',
        'ZONES = [',
        '    Zone("a.wav", 45, 40, 50),',
        '    Zone("b.wav", 55, 51, 60),',
        ']',
      ),
      ['a.wav 40 50 45', 'b.wav 51 60 55'],
    ],
  ])('give the zones of %s', (_, text, expected) => {
    expect(values(text, ...keys)).toEqual(expected);
    expect(detect('zones.txt', text).kind).toBe('table');
  });

  it('take units from the text and from remarks behind fields', () => {
    const said = lines(
      '/* tune is in semitones */',
      'struct z { char *file; int lo, hi, root; float tune; };',
      'struct z all[] = { { "a.wav", 40, 50, 45, 0.12f }, { "b.wav", 51, 60, 55, -0.5f } };',
    );
    expect(values(said, 'tune')).toEqual(['12', '-50']);
    const remarked = said
      .replace('/* tune is in semitones */\n', '')
      .replace('float tune; }', 'float tune; /* cents */ }')
      .replace('; float', ';\nfloat');
    expect(values(remarked, 'tune')).toEqual(['0.12', '-0.5']);
  });

  it('are in groups by the names of several lists', () => {
    const text = lines(
      'typedef struct { const char *file; int lo, hi, root; } zone;',
      'static const zone sustain[] = { { "a.wav", 40, 50, 45 }, { "b.wav", 51, 60, 55 } };',
      'static const zone release[] = { { "c.wav", 40, 50, 45 }, { "d.wav", 51, 60, 55 } };',
    );
    expect(values(text, 'sample', 'group', 'trigger')).toEqual([
      'a.wav sustain -',
      'b.wav sustain -',
      'c.wav release release',
      'd.wav release release',
    ]);
  });

  it.each([
    'void setup() { play("a.wav", 36); if (x == 3) play("b.wav", 38); }',
    'load("a.wav", 36)',
    '<region> sample="a.wav"',
    'int x[] = { 1, 2 };',
    '',
  ])('are none in %j', (text) => {
    expect(constantsOf(text)).toBeUndefined();
  });

  it('stay in their places, with the comments before them', () => {
    const text = '// one\nint n; Zone z[] = { "a.wav" };';
    expect(constantsOf(text)).toBe(`// one\n${' '.repeat('int n; Zone z[] = '.length)}{ "a.wav" };`);
  });

  it.each([
    ['struct z { char name[32]; unsigned lo : 7, hi : 7; };', ['name', 'lo', 'hi']],
    ['struct Z {\n  f: String, // sample file\n  lo: u8,\n}', ['sample file', 'lo']],
    ['data class Zone(val file: String, val lo: Int = 0)', ['file', 'lo']],
    ['interface Z { file: string; keys: [number, number] }', ['file', 'keys']],
  ])('have the fields of %j', (text, headings) => {
    expect(declaredTypes(text)[0]?.headings).toEqual(headings);
  });

  it('have no type in a class that holds them', () => {
    expect(declaredTypes('class Kit { Zone[] all = { new Zone("a.wav", 36) }; int lo; int hi; }')).toEqual(
      [],
    );
  });
});
