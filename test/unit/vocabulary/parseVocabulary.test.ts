import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from '../../../server/vocabulary/jsonTree';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import { parsePlace } from '../../../server/vocabulary/places';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { writeVocabulary } from '../../../server/vocabulary/writeVocabulary';
import { examples } from './examples';

const good = `{
  "name": "Ferry landing",
  "levels": [
    { "element": "landing", "is": "instrument", "parameters": [] },
    { "element": "berth", "is": "group", "inside": ["pier"] },
    { "element": "boat", "is": "region", "parameters": [
      { "parameter": "sample", "at": "@cargo", "form": { "kind": "path", "folder": "Hold" } },
      { "parameter": "lokey", "at": "draught", "part": 1, "between": "..", "form": { "kind": "key", "written": "name", "middleC": "C3" } }
    ] }
  ],
  "unsettled": ["middleC"]
}`;

/** The problems as the text at their place and the message. */
function problemsOf(text: string): string[] {
  return parseVocabulary(text).problems.map(
    ({ message, start, end }) => `${text.slice(start, end)} :: ${message}`,
  );
}

const changed = (from: string, to: string) => problemsOf(good.replace(from, to));

describe('reading a vocabulary', () => {
  it('gives what it says', () => {
    const { vocabulary, problems } = parseVocabulary(`\uFEFF${good}`);
    expect(problems).toEqual([]);
    expect(vocabulary).toEqual({
      name: 'Ferry landing',
      levels: [
        { element: 'landing', is: 'instrument', parameters: [] },
        { element: 'berth', is: 'group', inside: ['pier'], parameters: [] },
        {
          element: 'boat',
          is: 'region',
          parameters: [
            { parameter: 'sample', at: '@cargo', form: { kind: 'path', folder: 'Hold' } },
            {
              parameter: 'lokey',
              at: 'draught',
              part: 1,
              between: '..',
              form: { kind: 'key', written: 'name', middleC: 'C3' },
            },
          ],
        },
      ],
      unsettled: ['middleC'],
    });
  });

  it('tells of a fault in the JSON with its place', () => {
    expect(changed('"name": "Ferry landing",', '"name": "Ferry landing"')[0]).toMatch(/^" :: A "," or "}"/);
    expect(changed('"is": "region"', '"is": region')[0]).toMatch(/^region :: A value is missing/);
    expect(problemsOf('{ "name": "a\n" }')[0]).toMatch(/^"a :: .*no double quote at its end/);
    expect(problemsOf('')[0]).toContain('A value is missing');
    expect(problemsOf(`${good} x`)[0]).toMatch(/^x :: Nothing can stand/);
  });

  it('tells of every other fault with its place', () => {
    expect(changed('"inside"', '"insde"')).toEqual([
      expect.stringMatching(/^"insde" :: .*Did you mean "inside"/),
    ]);
    expect(changed('"kind": "path"', '"kind": "pth"')).toEqual([
      expect.stringMatching(/^"pth" :: .*Did you mean "path"/),
    ]);
    expect(changed('"lokey"', '"lokeyy"')).toEqual([
      expect.stringMatching(/^"lokeyy" :: .*Did you mean "lokey"/),
    ]);
    expect(changed('"@cargo"', '"cargo[@]"')).toEqual([expect.stringMatching(/^"cargo\[@\]" :: .*no place/)]);
    expect(changed('"part": 1', '"part": 3')).toEqual([expect.stringMatching(/^3 :: "part" is 1 or 2/)]);
    expect(changed('"C3"', '"C2"')).toEqual([
      expect.stringMatching(/^"C2" :: "middleC" must be "C3", "C4" or "C5"/),
    ]);
    expect(changed('"is": "group"', '"is": "region"')).toEqual([
      expect.stringMatching(/^"region" :: The last level, and no other/),
    ]);
    expect(changed('"written": "name", ', '')).toEqual([expect.stringMatching(/^{ :: "written" is missing/)]);
    expect(changed('"element": "boat"', '"element": "a boat"')).toEqual([
      expect.stringMatching(/^"a boat" :: .*no name of an element/),
    ]);
  });

  it('leaves out a parameter that makes no sense and keeps the rest', () => {
    const { vocabulary } = parseVocabulary(good.replace('"kind": "path"', '"kind": "pth"'));
    expect(vocabulary?.levels[2]?.parameters.map(({ parameter }) => parameter)).toEqual(['lokey']);
    expect(parseVocabulary(good.replace('"element": "boat", ', '')).vocabulary).toBeUndefined();
  });

  it('asks for the ends of layers that sound one at a time', () => {
    const takes = (rest: string) =>
      problemsOf(good.replace('"unsettled"', `"takes": [{ "element": "berth", ${rest} }], "unsettled"`));
    expect(takes('"are": "layers", "upTo": [50, 127]')).toEqual([]);
    for (const upTo of ['[50]', '[50, 128]', '[50.5, 127]', '["50", "127"]', '50'])
      expect(takes(`"are": "layers", "upTo": ${upTo}`)[0]).toContain(`${upTo} :: "upTo" lists`);
    expect(takes('"are": "layers"')[0]).toContain('"upTo" lists');
    expect(takes('"are": "heaps"')[0]).toContain('"random", "turns" or "layers"');
  });

  it('asks for a centre between left and right', () => {
    const pan = '{ "kind": "pan", "left": 0, "centre": 2, "right": 1 }';
    expect(changed('{ "kind": "path", "folder": "Hold" }', pan)[0]).toContain('"centre" must lie between');
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.nat(good.length), fc.nat(20), fc.string({ maxLength: 5 }), (at, length, put) => {
        parseVocabulary(good.slice(0, at) + put + good.slice(at + length));
      }),
    );
    expect(problemsOf('['.repeat(100_000))[0]).toContain('nested too deep');
  });
});

// JSON is as RFC 8259 defines it; the engine's own reader is the judge.
describe('reading JSON', () => {
  it('takes what the engine takes, and nothing else', () => {
    const text = fc.oneof(
      fc.json(),
      fc.tuple(fc.json(), fc.nat(30), fc.string({ maxLength: 2 })).map(([json, at, put]) => {
        return json.slice(0, at) + put + json.slice(at + 1);
      }),
    );
    fc.assert(
      fc.property(text, (json) => {
        let good = true;
        try {
          JSON.parse(json);
        } catch {
          good = false;
        }
        expect(readJson(json).problem === undefined).toBe(good);
      }),
    );
  });
});

describe('writing a vocabulary', () => {
  it('reads back as it was, and writes the same again', () => {
    const { vocabulary } = parseVocabulary(good);
    const text = writeVocabulary(vocabulary as Vocabulary);
    expect(parseVocabulary(text)).toEqual({ vocabulary, problems: [] });
    expect(writeVocabulary(parseVocabulary(text).vocabulary as Vocabulary)).toBe(text);
    expect(JSON.parse(text)).toEqual(
      JSON.parse(good.replace('"inside": ["pier"]', '"inside": ["pier"], "parameters": []')),
    );
  });
});

describe.each(Object.entries(examples))('the invented vocabulary %s', (_, { vocabulary }) => {
  it('is kept in a file and found good by the reader and the schema', () => {
    const text = writeVocabulary(vocabulary);
    expect(parseVocabulary(text)).toEqual({ vocabulary, problems: [] });
    expect(isValid(JSON.parse(text))).toBe(true);
  });
});

describe('a place', () => {
  it('is taken apart', () => {
    expect(parsePlace('@low')).toEqual({ steps: [], attribute: 'low' });
    expect(parsePlace('.')).toEqual({ steps: [], attribute: undefined });
    expect(parsePlace(`${'a/'.repeat(48)}@b`)?.steps).toHaveLength(48);
    // A way without end is none.
    expect(parsePlace(`${'a/'.repeat(49)}@b`)).toBeUndefined();
    expect(parsePlace(`${'a/'.repeat(20_000)}@b`)).toBeUndefined();
    expect(parsePlace('a/b:c/@d')).toEqual({
      steps: [
        { element: 'a', selectors: [] },
        { element: 'b:c', selectors: [] },
      ],
      attribute: 'd',
    });
    expect(parsePlace(`s[@n="a/b]"][@m='x']`)).toEqual({
      steps: [
        {
          element: 's',
          selectors: [
            ['n', 'a/b]'],
            ['m', 'x'],
          ],
        },
      ],
      attribute: undefined,
    });
  });

  it('is none where it has no sense', () => {
    for (const at of ['', '@', '/a', 'a/', 'a//b', 'a b', '@a/b', 'a[1]', 'a[@n]', 'a[@n=x]', '1a', '../a']) {
      expect([at, parsePlace(at)]).toEqual([at, undefined]);
    }
  });
});

interface Schema {
  $ref?: string;
  const?: unknown;
  enum?: unknown[];
  type?: string;
  minLength?: number;
  minItems?: number;
  minProperties?: number;
  exclusiveMinimum?: number;
  not?: Schema;
  oneOf?: Schema[];
  required?: string[];
  items?: Schema;
  properties?: Record<string, Schema>;
  additionalProperties?: boolean | Schema;
  definitions?: Record<string, Schema>;
}

const schema = JSON.parse(
  readFileSync(new URL('../../../server/vocabulary/vocabulary.schema.json', import.meta.url), 'utf8'),
) as Schema;

/** Whether a value is valid by a schema, for the keywords of JSON Schema draft-07 that this one uses. */
function isValid(value: unknown, by: Schema = schema): boolean {
  if (by.$ref) return isValid(value, schema.definitions?.[by.$ref.replace('#/definitions/', '')]);
  if ('const' in by && value !== by.const) return false;
  if (by.enum && !by.enum.includes(value)) return false;
  if (by.not && isValid(value, by.not)) return false;
  if (by.oneOf && by.oneOf.filter((one) => isValid(value, one)).length !== 1) return false;
  const types: Record<string, () => boolean> = {
    object: () => typeof value === 'object' && value !== null && !Array.isArray(value),
    array: () => Array.isArray(value),
    string: () => typeof value === 'string',
    number: () => typeof value === 'number',
    integer: () => Number.isInteger(value),
    boolean: () => typeof value === 'boolean',
  };
  if (by.type && !types[by.type]?.()) return false;
  if (typeof value === 'string') return value.length >= (by.minLength ?? 0);
  if (typeof value === 'number') return value > (by.exclusiveMinimum ?? Number.NEGATIVE_INFINITY);
  if (Array.isArray(value)) {
    return value.length >= (by.minItems ?? 0) && value.every((item) => !by.items || isValid(item, by.items));
  }
  if (typeof value !== 'object' || value === null) return true;
  const members = Object.entries(value);
  if (members.length < (by.minProperties ?? 0)) return false;
  if (by.required?.some((name) => !Object.hasOwn(value, name))) return false;
  return members.every(([name, member]) => {
    const known = by.properties && Object.hasOwn(by.properties, name) ? by.properties[name] : undefined;
    if (known) return isValid(member, known);
    const more = by.additionalProperties ?? true;
    return typeof more === 'boolean' ? more : isValid(member, more);
  });
}

const faults: [what: string, from: string, to: string][] = [
  ['nothing', '', ''],
  ['a name', '"Ferry landing"', '""'],
  ['a member', '"inside"', '"insde"'],
  ['a kind of form', '"kind": "path"', '"kind": "pth"'],
  ['a field', '"folder"', '"foldr"'],
  ['a part', '"part": 1', '"part": 3'],
  ['a choice', '"C3"', '"C2"'],
  ['a missing field', '"written": "name", ', ''],
  ['a missing element', '"element": "boat", ', ''],
  ['a level', '"is": "group"', '"is": "folder"'],
  ['a velocity', '{ "kind": "path", "folder": "Hold" }', '{ "kind": "velocity", "most": 0 }'],
  ['a number', '{ "kind": "path", "folder": "Hold" }', '{ "kind": "number", "times": 0 }'],
  ['an offset', '"middleC": "C3"', '"offset": 1.5'],
  ['a word', '{ "kind": "path", "folder": "Hold" }', '{ "kind": "words", "words": {} }'],
  [
    'a first frame',
    '{ "kind": "path", "folder": "Hold" }',
    '{ "kind": "position", "unit": "frames", "first": 2 }',
  ],
  [
    'a good form',
    '{ "kind": "path", "folder": "Hold" }',
    '{ "kind": "level", "unit": "dB", "attenuation": true }',
  ],
];

describe('the schema', () => {
  it.each(faults)('agrees with the reader on %s', (what, from, to) => {
    const text = good.replace(from, to);
    if (what !== 'nothing') expect(text).not.toBe(good);
    expect(isValid(JSON.parse(text))).toBe(problemsOf(text).length === 0);
  });
});
