/** Lowest and highest key of a kind of instrument, with middle C = 60; sounding pitches (common practice). */
export interface InstrumentSpan {
  /** As a message names it. */
  name: string;
  /** Words for it in file names and titles, in lower case. */
  words: readonly string[];
  low: number;
  high: number;
}

/** To know another kind of instrument, add a line. */
export const instrumentSpans: readonly InstrumentSpan[] = [
  { name: 'piano', words: ['piano', 'pianoforte', 'klavier', 'flügel', 'grand'], low: 21, high: 108 },
  { name: 'harpsichord', words: ['harpsichord', 'cembalo', 'clavecin'], low: 29, high: 89 },
  { name: 'celesta', words: ['celesta', 'celeste'], low: 60, high: 108 },
  { name: 'harp', words: ['harp', 'harfe', 'harpe', 'arpa'], low: 23, high: 103 },
  { name: 'guitar', words: ['guitar', 'gitarre', 'guitare', 'guitarra', 'chitarra'], low: 40, high: 88 },
  { name: 'violin', words: ['violin', 'geige', 'violine', 'violon', 'violino'], low: 55, high: 103 },
  { name: 'viola', words: ['viola', 'bratsche'], low: 48, high: 91 },
  { name: 'cello', words: ['cello', 'violoncello', 'violoncelle'], low: 36, high: 84 },
  { name: 'double bass', words: ['contrabass', 'kontrabass', 'contrebasse'], low: 28, high: 67 },
  { name: 'flute', words: ['flute', 'flöte', 'flûte', 'flauta', 'flauto'], low: 60, high: 98 },
  { name: 'oboe', words: ['oboe', 'hautbois'], low: 58, high: 91 },
  { name: 'clarinet', words: ['clarinet', 'klarinette', 'clarinette', 'clarinete'], low: 50, high: 94 },
  { name: 'bassoon', words: ['bassoon', 'fagott', 'basson', 'fagotto'], low: 34, high: 75 },
  { name: 'trumpet', words: ['trumpet', 'trompete', 'trompette', 'trompeta', 'tromba'], low: 52, high: 84 },
  { name: 'trombone', words: ['trombone', 'posaune'], low: 40, high: 72 },
  { name: 'tuba', words: ['tuba'], low: 28, high: 58 },
  { name: 'vibraphone', words: ['vibraphone', 'vibraphon', 'vibes'], low: 53, high: 89 },
  { name: 'xylophone', words: ['xylophone', 'xylophon'], low: 65, high: 108 },
  { name: 'glockenspiel', words: ['glockenspiel'], low: 79, high: 108 },
  { name: 'marimba', words: ['marimba'], low: 36, high: 96 },
];

/** Key spans of keyboards by their number of keys, as lowest and highest MIDI key (common practice). */
export const keyboardSpans: readonly { keys: number; low: number; high: number }[] = [
  { keys: 88, low: 21, high: 108 },
  { keys: 76, low: 28, high: 103 },
  { keys: 61, low: 36, high: 96 },
];
