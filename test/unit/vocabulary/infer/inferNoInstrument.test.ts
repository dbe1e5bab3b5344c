import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { examples } from '../examples';

const infer = (text: string) => inferVocabulary(text, { path: 'thing.xml' });

describe('XML that is no instrument', () => {
  // RSS 2.0 specification: an item's enclosure has url, length and type.
  it('a feed of recordings', () => {
    const item = (name: string, bytes: number) =>
      `<item><title>${name}</title><enclosure url="https://example.org/${name}.mp3" length="${bytes}" type="audio/mpeg"/></item>`;
    expect(
      infer(
        `<rss version="2.0"><channel><title>Talks</title>${item('one', 90)}${item('two', 70)}</channel></rss>`,
      ),
    ).toBeUndefined();
  });

  it('a feed in words of its own', () => {
    const text =
      '<talks><talk title="One" duration="300" url="one.mp3"/><talk title="Two" duration="400" url="two.mp3"/></talks>';
    expect(infer(text)).toBeUndefined();
  });

  // HTML Living Standard, 4.8.9: the audio element. XHTML 1.0 gives the namespace.
  it('a page with recordings', () => {
    const text =
      '<html xmlns="http://www.w3.org/1999/xhtml"><body><audio src="a.wav" loop="loop"/><audio src="b.wav"/></body></html>';
    expect(infer(text)).toBeUndefined();
  });

  // SVG 1.1 (W3C Recommendation), 17.1: links.
  it('a picture with links to recordings', () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg"><a href="low-key.wav"><rect width="3" height="4"/></a><a href="b.wav"/></svg>';
    expect(infer(text)).toBeUndefined();
  });

  // SMIL 3.0 (W3C Recommendation), 7: media objects.
  it('a presentation', () => {
    const text =
      '<smil xmlns="http://www.w3.org/ns/SMIL" version="3.0"><body><seq><audio src="a.wav" begin="1s" end="4s" soundLevel="50%"/><audio src="b.wav" begin="0s"/></seq></body></smil>';
    expect(infer(text)).toBeUndefined();
  });

  it('steps of a build that copy recordings', () => {
    const text =
      '<project><target name="sounds"><copy file="a.wav" to="low"/><copy file="b.wav" to="high"/></target></project>';
    expect(infer(text)).toBeUndefined();
  });

  it('a list of music with its musical keys', () => {
    const text =
      '<evening><piece file="a.wav" key="Am" speed="120" volume="0.8"/><piece file="b.wav" key="F#m" speed="98" volume="1"/></evening>';
    expect(infer(text)).toBeUndefined();
  });

  it('a list of sounds with distances', () => {
    const text =
      '<game><sound file="door.ogg" volume="0.5" min="1" max="20" loop="false"/><sound file="wind.ogg" volume="0.8" min="5" max="100" loop="true"/></game>';
    expect(infer(text)).toBeUndefined();
  });

  it('a list of music with single letters that happen to be in order', () => {
    const text =
      '<album><song src="a.mp3" h="40" l="3" k="12"/><song src="b.mp3" h="41" l="5" k="12"/><song src="c.mp3" h="60" l="7" k="33"/></album>';
    expect(infer(text)).toBeUndefined();
  });

  it('settings with keys, levels and paths that lead to no audio', () => {
    const entry = (key: number) => `<entry key="${key}" level="3"><path>shelf/box ${key}</path></entry>`;
    expect(infer(`<store>${entry(12)}${entry(13)}</store>`)).toBeUndefined();
    const step = (at: number) => `<step name="#s${at}" from="${at}" to="${at + 4}" velocity="9"/>`;
    expect(infer(`<robot>${step(40)}${step(45)}</robot>`)).toBeUndefined();
  });

  it.each(['', ' ', 'lokey=3', '{"a":1}', '<', '<a', '<a/>', '\ufeff<a></a>'])('%j', (text) => {
    expect(infer(text)).toBeUndefined();
  });
});

describe('hostile XML', () => {
  const many = (count: number, text: (at: number) => string) =>
    Array.from({ length: count }, (_, at) => text(at)).join('');

  it('with a hundred thousand names is no instrument', () => {
    expect(infer(`<a>${many(100_000, (at) => `<n${at} x${at}="${at}"/>`)}</a>`)).toBeUndefined();
  });

  it('with a hundred thousand attributes in one tag is none', () => {
    expect(infer(`<a ${many(100_000, (at) => ` k${at}="${at}"`)}/>`)).toBeUndefined();
  });

  it('as deep as it is long is none', () => {
    expect(infer('<a>'.repeat(200_000))).toBeUndefined();
  });

  it('with values and names of a million characters is read as far as it makes sense', () => {
    const text = `<a><zone key="60" file="a.wav" note="${'x'.repeat(1e6)}" ${'y'.repeat(1e6)}="1"/></a>`;
    const places = infer(text)
      ?.vocabulary.levels.at(-1)
      ?.parameters.map(({ at }) => at);
    expect(places).toEqual(['@key', '@file']);
  });

  it('gets entities of plain text put in, and none that grow or refer to themselves', () => {
    const of = (subset: string) =>
      infer(`<!DOCTYPE a [${subset}]><a><zone key="60" file="&e;"/><zone key="61" file="&e;"/></a>`);
    expect(of('<!ENTITY e "e.wav">')).toBeDefined();
    expect(of('<!ENTITY e "&f;"><!ENTITY f "&e;.wav">')).toBeUndefined();
    const doubled = Array.from({ length: 30 }, (_, at) => `<!ENTITY e${at} "&e${at + 1};&e${at + 1};">`);
    expect(of(`<!ENTITY e "&e0;.wav">${doubled.join('')}`)).toBeUndefined();
    expect(of('<!ENTITY e SYSTEM "e.wav">')).toBeUndefined();
  });

  it('cut off or changed anywhere never throws', () => {
    const texts = Object.values(examples).map(({ text }) => text.slice(0, 3000));
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.nat(3000),
        fc.nat(60),
        fc.string({ maxLength: 20 }),
        (text, at, length, put) => {
          const changed = text.slice(0, at) + put + text.slice(at + length);
          const inferred = infer(changed);
          for (const { span } of inferred?.decisions ?? []) {
            expect(span.start).toBeGreaterThanOrEqual(0);
            expect(span.end).toBeLessThanOrEqual(changed.length);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('a running order with times of the day and musical keys', () => {
    const slot = (from: string, to: string, more: string) =>
      `<slot from="${from}" to="${to}" item="${to.replace(':', '')}.wav" level="-3" fadeIn="0.5" fadeOut="1" loop="no" ${more}/>`;
    const order = `<night>${slot('00:00', '00:04', 'key="D"')}${slot('00:04', '00:31', 'key="C"')}</night>`;
    expect(infer(order)).toBeUndefined();
    expect(infer(order.replace(/key="(.)"/g, 'lokey="$13" hikey="$14"'))).toBeDefined();
  });

  it('a telephone menu with digits, opening hours and lines', () => {
    const choice = (key: number, inner = '') => `<choice key="${key}" file="p${key}.wav">${inner}</choice>`;
    const menu = (most: number) =>
      `<hotline><prompt file="hello.wav"/>${choice(1)}${choice(2)}${choice(most, '<hours low="8" high="17"/><group name="desk" line="36-42"/>')}</hotline>`;
    expect(infer(menu(9))).toBeUndefined();
  });

  it('of any shape never throws', () => {
    const word = fc.constantFrom(
      'a',
      'low',
      'key',
      'file',
      'loop',
      'is',
      'v',
      'x:y',
      'é',
      '__proto__',
      'constructor',
    );
    const value = fc.oneof(
      fc.constantFrom('a.wav', '36', 'C2', '1-2', '0.5', '-3 dB', '__proto__', ''),
      fc.string({ maxLength: 5 }),
    );
    const element = (depth: number): fc.Arbitrary<string> =>
      fc
        .tuple(
          word,
          fc.array(fc.tuple(word, value), { maxLength: 4 }),
          depth === 0 ? fc.constant([]) : fc.array(element(depth - 1), { maxLength: 3 }),
          value,
        )
        .map(([name, pairs, children, text]) => {
          const attributes = pairs.map(([one, other]) => ` ${one}="${other.replace(/[<&"]/g, '')}"`).join('');
          return `<${name}${attributes}>${text.replace(/[<&]/g, '')}${children.join('')}</${name}>`;
        });
    fc.assert(
      fc.property(element(4), (text) => {
        const inferred = infer(text);
        expect(inferred?.vocabulary.levels.at(-1)?.is ?? 'region').toBe('region');
      }),
      { numRuns: 100 },
    );
  });
});
