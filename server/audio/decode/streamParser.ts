// Stands in for the parser of streams that the decoders of FLAC and Vorbis import: frames and packets are found in this
// folder, so of that parser only the names of the fields of a page are used, and the bundles need none of its code.

// biome-ignore lint/style/noDefaultExport: it is imported as such.
export default class StreamParser {}

export const codecFrames = 'codecFrames';
export const data = 'data';
export const header = 'header';
export const isLastPage = 'isLastPage';
export const totalSamples = 'totalSamples';
export const vorbisComments = 'vorbisComments';
export const vorbisSetup = 'vorbisSetup';
