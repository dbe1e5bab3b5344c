import type { Instrument } from '../../model/instrument';
import { declaredEntities } from '../../xml/declaredEntities';
import { decodeXmlAttribute } from '../../xml/scan/references';
import type { SampleListPlace, ValueForm, Vocabulary } from '../vocabulary';

/** The texts by which the regions of an instrument, or some of them, name their samples. */
export function sampleTexts(
  instrument: Instrument,
  counts: (region: number) => boolean = () => true,
): ReadonlySet<string> {
  const text = instrument.sources[0]?.text ?? '';
  const sample = instrument.names.canonical(instrument.names.idOf('sample'));
  const used = new Set<string>();
  for (const region of instrument.regions) {
    const parameter = counts(region) ? instrument.effective(region, sample) : -1;
    if (parameter < 0) continue;
    const { start, end } = instrument.valueSpan(parameter);
    used.add(decodeXmlAttribute(text.slice(start, end), declaredEntities(text)).trim());
  }
  return used;
}

/** How a vocabulary writes paths to samples. */
export function pathFormsOf({ levels }: Vocabulary): Extract<ValueForm, { kind: 'path' }>[] {
  return levels.flatMap(({ parameters }) =>
    parameters.flatMap(({ form }) => (form.kind === 'path' ? [form] : [])),
  );
}

/** The lists that samples of a vocabulary are in. */
export function sampleListsOf(vocabulary: Vocabulary): SampleListPlace[] {
  return pathFormsOf(vocabulary).flatMap(({ list }) => (list ? [list] : []));
}
