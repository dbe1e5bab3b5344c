import { dynamicIn } from '../trade/dynamics';

/** A difference in loudness from which on recordings of one key are taken for layers, in LU (our choice). */
export const leastLayerStep = 4;

/** What was heard of the recordings with one name of a layer. */
export interface LayerHeard {
  label: string;
  /** Loudness in LUFS of each recording that has one. */
  loudness: readonly number[];
}

/** How the loudness of layers lies to the order of their names. */
export type LayerOrder = 'as named' | 'as heard' | 'alike' | 'contradicted';

/**
 * The names of layers from the softest to the loudest: words in the order that they mean, numbers in the order of what is heard.
 * `contradicted` says that what is heard is clearly in another order than the words, `alike` that nothing to speak of is heard.
 */
export function orderedLayers(heard: readonly LayerHeard[]): { labels: string[]; order: LayerOrder } {
  const mean = new Map(
    heard.map(({ label, loudness }) => [
      label,
      loudness.reduce((sum, one) => sum + one, 0) / Math.max(1, loudness.length),
    ]),
  );
  const meanOf = (label: string) => mean.get(label) ?? 0;
  const byEar = [...mean.keys()].sort((a, b) => meanOf(a) - meanOf(b));
  if (!byEar.every((label) => dynamicIn(label) >= 0)) return { labels: byEar, order: 'as heard' };
  const byWord = [...byEar].sort((a, b) => dynamicIn(a) - dynamicIn(b));
  const span = meanOf(byEar[byEar.length - 1]) - meanOf(byEar[0]);
  if (byEar.length > 1 && span < leastLayerStep / 2) return { labels: byWord, order: 'alike' };
  const isContrary = byWord.some((label, at) =>
    byWord.slice(at + 1).some((louder) => meanOf(label) > meanOf(louder) + leastLayerStep / 4),
  );
  return { labels: byWord, order: isContrary ? 'contradicted' : 'as named' };
}
