import { dynamicIn } from '../trade/dynamics';

/** A difference in loudness from which on recordings of one key are taken for layers, in LU (our choice). */
export const leastLayerStep = 4;

/** What was heard of the recordings with one name of a layer. */
export interface LayerHeard {
  label: string;
  /** Loudness in LUFS of each recording that has one. */
  loudness: readonly number[];
}

/**
 * The names of layers from the softest to the loudest: words in the order that they mean, numbers in the order of what is heard.
 * `contradicted` says that the words are not in the order of what is heard.
 */
export function orderedLayers(heard: readonly LayerHeard[]): { labels: string[]; contradicted: boolean } {
  const mean = new Map(
    heard.map(({ label, loudness }) => [
      label,
      loudness.reduce((sum, one) => sum + one, 0) / Math.max(1, loudness.length),
    ]),
  );
  const byEar = [...mean.keys()].sort((a, b) => (mean.get(a) ?? 0) - (mean.get(b) ?? 0));
  const isWords = byEar.every((label) => dynamicIn(label) >= 0);
  if (!isWords) return { labels: byEar, contradicted: false };
  const byWord = [...byEar].sort((a, b) => dynamicIn(a) - dynamicIn(b));
  return { labels: byWord, contradicted: byWord.join() !== byEar.join() };
}
