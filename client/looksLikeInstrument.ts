/** Enough of a text to tell, in characters. */
const looked = 100_000;

/** The name of an audio file, or what instruments call keys, velocities and samples (common practice). */
const trade =
  /\.(?:wav|aiff?|aifc|flac|ogg|opus|mp3)\b|<instrument\b|\bsamples?\b|\bzones?\b|veloc|(?:root|base|unity|lo|low|hi|high|min|max)[_\-\s]?(?:key|note|vel)/i;

/** Whether XML speaks of what instruments are made of, so that it is worth asking the server. Quick, and rather too often right. */
export function looksLikeInstrument(xml: string): boolean {
  return trade.test(xml.slice(0, looked));
}
