import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { drawnKeys, layOut } from '../../../server/map/layout';
import type { MapScene } from '../../../server/map/mapScene';
import { palettes } from '../../../server/map/palette';
import { buildMapScene } from '../../../server/map/scene';
import { drawMapSvg } from '../../../server/map/svg';
import { readSfz } from '../../../server/sfz/read';

const scene = (text: string): MapScene =>
  buildMapScene(readSfz(text, { path: 'bells.sfz', include: () => ({ kind: 'missing' }) }));

const bells = `<group> group_label=soft hivel=63
<region> sample=a.wav lokey=48 hikey=59 pitch_keycenter=53
<region> sample=b.wav lokey=48 hikey=59 pitch_keycenter=53
<region> sample=c.wav lokey=58 hikey=65 pitch_keycenter=62
<group> group_label=loud & "bright" lovel=70 sw_last=36 sw_label="quick"
<region> sample=d.wav lokey=48 hikey=65
<region> sample=e.wav lokey=72 hikey=76 lovel=1`;

/** What an XML parser that is not ours finds: names of elements with their classes, texts, and errors by throwing. */
function parse(svg: string) {
  const elements: { name: string; attributes: Record<string, string> }[] = [];
  const texts: string[] = [];
  const ids: string[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    elements.push({ name, attributes: attributes as Record<string, string> });
    if (attributes.id) ids.push(attributes.id as string);
  });
  parser.on('text', (text) => {
    if (text.trim() !== '') texts.push(text);
  });
  parser.write(svg).close();
  const withClass = (name: string) =>
    elements.filter(({ attributes }) => attributes.class?.split(' ').includes(name));
  return { elements, texts, ids, withClass };
}

describe('the standing drawing of a keyboard map', () => {
  it('is well-formed XML with a title, a description and all shapes, gaps and overlaps', () => {
    const made = scene(bells);
    const { elements, texts, withClass, ids } = parse(drawMapSvg(made));
    expect(elements[0]?.name).toBe('svg');
    expect(elements[0]?.attributes.xmlns).toBe('http://www.w3.org/2000/svg');
    expect(elements[0]?.attributes['aria-labelledby']?.split(' ').every((id) => ids.includes(id))).toBe(true);
    expect(texts).toContain('Keyboard map of bells.sfz');
    // Four rectangles and two swatches; by hand: velocities 64..69 on keys 48..65, keys 66..71; keys 58 and 59 twice.
    expect(withClass('shape')).toHaveLength(4 + 2);
    expect(made.gaps).toHaveLength(2);
    expect(withClass('gap')).toHaveLength(2 + 1);
    expect(withClass('overlap')).toHaveLength(1 + 1);
    expect(withClass('switch')).toHaveLength(1 + 1);
  });

  it('refers to patterns that it holds, each of its own id', () => {
    const { elements, ids } = parse(drawMapSvg(scene(bells)));
    expect(new Set(ids).size).toBe(ids.length);
    for (const { attributes } of elements) {
      const reference = /^url\(#(.*)\)$/.exec(attributes.fill ?? '')?.[1];
      if (reference !== undefined) expect(ids).toContain(reference);
    }
  });

  it('says any text as it is, whatever marks are in it', () => {
    const any = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom('<', '&', '>', '"', "'", ']]>', '\u0000', '\ud800', 'a', '\n') }),
    );
    fc.assert(
      fc.property(any, any, any, any, (name, layer, sample, label) => {
        const made = scene('<region> key=60 sw_last=40');
        made.name = name;
        made.layers[0].name = layer;
        made.shapes[0].label = label;
        made.shapes[0].regions[0].sample = sample;
        made.keyswitches[0].label = label;
        const { elements } = parse(drawMapSvg(made));
        const known = 'svg title desc style defs pattern rect path g text tspan'.split(' ');
        expect(elements.filter((element) => !known.includes(element.name))).toEqual([]);
      }),
    );
  });

  it('keeps every shape inside the drawing', () => {
    const { elements, withClass } = parse(drawMapSvg(scene(bells)));
    const width = Number(elements[0]?.attributes.width);
    const height = Number(elements[0]?.attributes.height);
    for (const { attributes } of withClass('shape')) {
      expect(Number(attributes.x)).toBeGreaterThanOrEqual(0);
      expect(Number(attributes.y)).toBeGreaterThanOrEqual(0);
      expect(Number(attributes.width)).toBeGreaterThan(0);
      expect(Number(attributes.height)).toBeGreaterThan(0);
      expect(Number(attributes.x) + Number(attributes.width)).toBeLessThan(width);
      expect(Number(attributes.y) + Number(attributes.height)).toBeLessThan(height);
    }
  });

  it('draws an instrument without regions', () => {
    const { texts, withClass } = parse(drawMapSvg(scene('')));
    expect(withClass('shape')).toHaveLength(0);
    expect(texts).toContain('0 regions in 0 groups. No key plays anything.');
    // Three octaves of seven natural and five raised keys (common practice of keyboards).
    expect(withClass('natural')).toHaveLength(21);
    expect(withClass('raised')).toHaveLength(15);
  });

  it('follows the preferred colour scheme unless it is told one', () => {
    const made = scene(bells);
    expect(drawMapSvg(made)).toContain('@media (prefers-color-scheme:dark)');
    expect(drawMapSvg(made, 'light')).not.toContain('@media');
    expect(drawMapSvg(made, 'dark')).not.toContain('@media');
    expect(drawMapSvg(made, 'dark')).toContain(palettes.dark.paper);
  });
});

describe('the drawn keyboard', () => {
  it('fills the width with natural keys and has each raised key in its column', () => {
    const layout = layOut({ lowKey: 48, highKey: 83 }, { keyWidth: 10, plotHeight: 127, keyboardHeight: 50 });
    const keys = drawnKeys(layout);
    let right = 0;
    for (const { x, width } of keys.filter(({ raised }) => !raised)) {
      expect(x).toBeCloseTo(right, 9);
      right = x + width;
    }
    expect(right).toBe(360);
    for (const { key, x } of keys.filter(({ raised }) => raised)) expect(x).toBe((key - 48) * 10);
  });
});

/** Contrast ratio by WCAG 2.2, "relative luminance" and "contrast ratio". */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5]
      .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)) as [
      number,
      number,
      number,
    ];
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (lighter + 0.05) / (darker + 0.05);
}

describe.each(Object.entries(palettes))('the %s palette', (_, palette) => {
  it.each([palette.paper, palette.plot])('can be read on %s', (ground) => {
    // WCAG 2.2, 1.4.3 for text and 1.4.11 for graphics.
    expect(contrast(palette.ink, ground)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(palette.quiet, ground)).toBeGreaterThanOrEqual(4.5);
    for (const tone of palette.tones) expect(contrast(tone, ground)).toBeGreaterThanOrEqual(3);
  });

  it('says which groups are drawn, or that they lie one over the other', () => {
    const keys = [60, 61, 62].map((key) => `<region> sample=a.wav key=${key}`).join('\n');
    const groups = ['one', 'two'].map((name) => `<group> group_label=${name}\n${keys}`).join('\n');
    const piled = buildMapScene(readSfz(groups, { path: 'a.sfz' }));
    expect(drawMapSvg(piled)).toContain('Groups overlap on the map. The uppermost is shown.');
    const alone = drawMapSvg(piled, 'auto', { hiddenLayers: new Set([0]) });
    expect(alone).toContain('Shown: two.');
    expect(alone).not.toContain('Groups overlap');
    const apart = buildMapScene(readSfz(keys, { path: 'a.sfz' }));
    expect(drawMapSvg(apart)).not.toMatch(/Shown:|Groups overlap/);
  });
});
