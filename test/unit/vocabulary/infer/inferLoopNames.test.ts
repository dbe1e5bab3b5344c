import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const bells = (loops: readonly string[], says = '') =>
  `<bells>${says}${loops
    .map(
      (loop, at) =>
        `<bell><clip>${at}.wav</clip><keys low="${40 + 5 * at}" high="${44 + 5 * at}" pitch="${42 + 5 * at}"/>${loop}</bell>`,
    )
    .join('')}</bells>`;

describe('ends of loops that name what comes behind them', () => {
  it.each([
    ['<loop first="300" firstAfter="9000"/>', '<loop first="200" firstAfter="7001"/>'],
    ['<loop start="300" beyond="9000"/>', '<loop start="200" beyond="7001"/>'],
    ['<loop begin="300" stopBefore="9000"/>', '<loop begin="200" stopBefore="7001"/>'],
    ['<loop begin="300" notPlayed="9000"/>', '<loop begin="200" notPlayed="7001"/>'],
    ['<repeat from="300" pastEnd="9000"/>', '<repeat from="200" pastEnd="7001"/>'],
    ['<loop start="300" endExcl="9000"/>', '<loop start="200" endExcl="7001"/>'],
  ])('%s', (...loops) => {
    expect(valuesIn(bells(loops), 'loop_start', 'loop_end', 'offset')).toEqual(['300 8999 -', '200 7000 -']);
  });

  it('are no ends where numbers lie below the start', () => {
    const loops = ['<loop start="300" after="2"/>', '<loop start="200" after="3"/>'];
    expect(valuesIn(bells(loops), 'loop_end')).toEqual(['-', '-']);
  });
});

describe('loops by their start and length', () => {
  it('are read where a comment speaks of frames', () => {
    const says = '<!-- again: start = first frame, length = number of frames that are repeated -->';
    const loops = [
      '<again kind="forever" start="300" length="9000"/>',
      '<again kind="whileHeld" start="200" length="100"/>',
      '<again kind="none" start="0" length="0"/>',
    ];
    expect(valuesIn(bells(loops, says), 'loop_mode', 'loop_start', 'loop_end', 'offset')).toEqual([
      'loop_continuous 300 9299 -',
      'loop_sustain 200 299 -',
      'no_loop - - -',
    ]);
  });

  it('are read where frames are counted', () => {
    const loops = [
      '<circle mode="endless" at="300" frames="9000"/>',
      '<circle mode="held" at="200" frames="100"/>',
    ];
    expect(valuesIn(bells(loops), 'loop_mode', 'loop_start', 'loop_end')).toEqual([
      'loop_continuous 300 9299',
      'loop_sustain 200 299',
    ]);
  });

  it('are none where frames stand as a range', () => {
    const loops = ['<loop frames="300-9000"/>', '<loop frames="200-7000"/>'];
    expect(valuesIn(bells(loops), 'loop_start', 'loop_end')).toEqual(['300 9000', '200 7000']);
  });

  it('are read where they go on for so long', () => {
    const loops = ['<loop start="300" for="9000"/>', '<loop start="200" for="100"/>'];
    expect(valuesIn(bells(loops), 'loop_start', 'loop_end')).toEqual(['300 9299', '200 299']);
  });

  it('have the kind that a comment gives a number', () => {
    const says = '<!-- loop: 0 = none, 1 = while the key is held, 2 = forever -->';
    const text = `<reeds>${says}${[2, 1, 0]
      .map(
        (kind, at) =>
          `<reed wave="${at}.wav" lo="${40 + at}" hi="${40 + at}" root="${40 + at}" loop="${kind}"/>`,
      )
      .join('')}</reeds>`;
    expect(valuesIn(text, 'loop_mode')).toEqual(['loop_continuous', 'loop_sustain', 'no_loop']);
  });
});

describe('bare names of the points of a loop', () => {
  const reeds = (says: string, ...names: [string, string]) =>
    `<reeds><!-- ${says} -->${[40, 45]
      .map(
        (key) =>
          `<reed wav="${key}.wav" low="${key}" high="${key + 4}" root="${key + 2}" ${names[0]}="300" ${names[1]}="9000"/>`,
      )
      .join('')}</reeds>`;

  it.each([
    ['start and end are the loop points.', 'start', 'end'],
    ['Each reed loops from start to end, counted in frames.', 'start', 'end'],
    ['The loop of a reed goes from "from" to "to".', 'from', 'to'],
    ['Loop points: start, end (in frames).', 'start', 'end'],
    ['Die Schleife l\u00e4uft von anfang bis ende.', 'anfang', 'ende'],
  ])('are told in a sentence: %s', (says, start, end) => {
    const text = reeds(says, start, end);
    expect(valuesIn(text, 'loop_start', 'loop_end', 'offset', 'end')).toEqual(Array(2).fill('300 9000 - -'));
  });

  it.each([
    'start and end trim the recording, there are no loops',
    'Loops start and end at zero crossings.',
    'start and end trim the recording, loops are in the files.',
    'The reeds are looped elsewhere; start and end cut them.',
  ])('are places in the sample else: %s', (says) => {
    const text = reeds(says, 'start', 'end');
    expect(valuesIn(text, 'loop_start', 'loop_end', 'offset', 'end')).toEqual(Array(2).fill('- - 300 9000'));
  });
});
