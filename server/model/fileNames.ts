import type { Notation } from './notation';

/** Endings of the sample files that the SFZ format lists (its public documentation): WAV, Ogg Vorbis, AIFF, FLAC. */
export const sampleEndings = ['wav', 'ogg', 'aif', 'aiff', 'flac'] as const;

/** Endings of the names of audio files of any kind, in small letters (common practice). */
export const audioEndings: ReadonlySet<string> = new Set([
  ...sampleEndings,
  ...['wave', 'bwf', 'rf64', 'w64', 'aifc', 'oga', 'opus', 'mp3', 'snd', 'au'],
]);
const longestEnding = Math.max(...[...audioEndings].map((ending) => ending.length));

/** The source of a pattern, for use without regard to case and with `u`, for the dot and the ending of an audio file anywhere in a text. */
export const audioEndingInText: string = String.raw`\.(?:${[...audioEndings].join('|')})(?![\p{L}\p{N}])`;
const audioEnding = new RegExp(audioEndingInText, 'iu');

/** Whether a text names an audio file somewhere. */
export function namesAudioFileIn(text: string): boolean {
  return audioEnding.test(text);
}

/** Endings of the texts of instruments and of their parts, as `sfzh` for a part that is included. */
export const instrumentEndings = ['sfz', 'sfzh', 'xml'] as const;

/** The ending that a new file of a format gets, with its dot. */
export const newFileEndings: Readonly<Record<Notation['format'], string>> = {
  sfz: '.sfz',
  xml: '.instrument.xml',
};

/** The dot and the ending of a name that ends like a sample file. */
export const sampleEnding: RegExp = endingOf(sampleEndings);
const instrumentEnding = endingOf(instrumentEndings);

function endingOf(endings: readonly string[]): RegExp {
  return new RegExp(`\\.(?:${endings.join('|')})$`, 'i');
}

/** Whether a name ends like one of the sample files that the SFZ format lists. */
export function isSampleFileName(name: string): boolean {
  return sampleEnding.test(name);
}

/** Whether a text ends like the name of an audio file, whether or not the SFZ format lists its kind. */
export function isAudioFileName(text: string): boolean {
  const dot = text.lastIndexOf('.');
  return (
    dot > 0 && text.length - dot - 1 <= longestEnding && audioEndings.has(text.slice(dot + 1).toLowerCase())
  );
}

/** Whether a file is named like the text of an instrument or a part of one. */
export function isInstrumentFileName(path: string): boolean {
  return instrumentEnding.test(path);
}

/** Whether a file is named like the text of a whole instrument, as far as a name can tell: `sfzh` is that of a part. */
export function isWholeInstrumentFileName(path: string): boolean {
  return isInstrumentFileName(path) && !path.toLowerCase().endsWith('.sfzh');
}

/** Whether a file is named like SFZ or a part of it. */
export function isSfzFileName(path: string): boolean {
  return /\.sfzh?$/i.test(path);
}

/** Whether a file is named like XML of any kind. */
export function isXmlFileName(path: string): boolean {
  return /\.xml$/i.test(path);
}

/** Whether a file is named as being in our XML notation. */
export function isInstrumentXmlFileName(path: string): boolean {
  return /\.instrument\.xml$/i.test(path);
}

/**
 * Whether Windows takes a name for a device and for no file, whatever stands behind a point (Microsoft, Naming Files, Paths, and
 * Namespaces).
 */
export function isDeviceName(name: string): boolean {
  return /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i.test(name);
}
