import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { regions } from './tableRegions';

const read = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter, volume }) =>
    [sample, lokey, hikey, pitch_keycenter, volume ?? 0].join(' '),
  );
const expected = ['ob_58.wav 55 60 58 -6', 'ob_63.wav 61 65 63 0'];
const json =
  '{"file":"ob_58.wav","root":58,"lo":55,"hi":60,"db":-6}\n{"file":"ob_63.wav","root":63,"lo":61,"hi":65,"db":0}';

describe('sentences around a list of zones in JSON or a script', () => {
  it.each([
    [
      'above lines',
      `one object per line; "db" is the level, "root" a MIDI number (60 = middle C)\n\n${json}`,
    ],
    ['above and below', `Zones of the oboe, so far.\n${json}\n\nThe rest follows next week.`],
    ['in another language', `Eine Zeile je Zone, "db" ist der Pegel:\n${json}\n`],
    ['without blanks', `一行に一つのゾーンです。音量はdBで書きます。\n${json}`],
    [
      'around a fence',
      `# Oboe\n\nHere are the zones I have:\n\n\`\`\`json\n[${json.replace('\n', ',\n')}]\n\`\`\`\nMore to come, I hope.\n`,
    ],
    [
      'with a greeting',
      `Bonjour, voici mes zones (do central = 60) :\n\n${json}\n\nLes niveaux "db" sont en dB.\nMerci !\n`,
    ],
    [
      'above calls',
      'zone list (from the old script)\nzone("ob_58.wav", 58, 55, 60, -6.0)\nzone("ob_63.wav", 63, 61, 65, 0.0)\n-- (file, root, low, high, db)',
    ],
    [
      'above tuples',
      'Oboe, all keys by MIDI numbers\nzones = [\n  ("ob_58.wav", 55, 60, 58, -6.0),\n  ("ob_63.wav", 61, 65, 63, 0.0),\n]\n# (file, low, high, root, db)',
    ],
  ])('are passed over: %s', (_, text) => {
    expect(read(text)).toEqual(expected);
    expect(looksLikeZoneTable(text)).toBe(true);
  });

  it('say how values are meant', () => {
    const said = 'one object per line; "vol" is 0-127 (127 = full level), "pan" is 0-127 (64 = centre)';
    const [region] = regions(
      `${said}\n{"file":"a.wav","root":58,"lo":55,"hi":60,"vol":127,"pan":127}\n{"file":"b.wav","root":63,"lo":61,"hi":65,"vol":127,"pan":64}`,
    );
    expect(region.pan).toBe('100');
    expect(region.volume ?? '0').toBe('0');
  });

  it('leave a constant before the list what it is', () => {
    const text =
      'MIDDLE_C = "C3"  # the key in the middle\n# (file, low, high, root)\nZONES = [\n  ("ob_58.wav", "C3", "E3", "D3"),\n  ("ob_63.wav", "F3", "A3", "G3"),\n]\n\nfor zone in ZONES:\n    add(*zone)\n';
    expect(regions(text).map(({ lokey }) => lokey)).toEqual(['60', '65']);
  });

  it.each([
    'function init() { return { "file": "a.wav", "lo": 1 }; }\nif (x) { play("a.wav"); }',
    'import zones\nplayer.start()\nplayer.play({"file": "a.wav"})\nfor zone in zones: print(zone)',
  ])('are no code: %#', (text) => {
    expect(looksLikeZoneTable(text)).toBe(false);
  });
});
