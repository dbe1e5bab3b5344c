import { headerKindOf } from '../../../server/model/headerKinds';
import type { Instrument } from '../../../server/model/instrument';
import { InstrumentBuilder, plainNumber } from '../../../server/model/instrumentBuilder';
import type { ReadOptions } from '../../../server/model/notation';
import { splitRange } from '../../../server/vocabulary/editRange';
import type { ElementText } from '../../../server/vocabulary/styleTree';
import { elementTree, valueAt } from '../../../server/vocabulary/styleTree';
import { readValue } from '../../../server/vocabulary/valueForms';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { canonicalNameOf, otherHalf, placesOf } from '../../../server/vocabulary/writePlaces';
import { decodeXmlAttribute } from '../../../server/xml/references';

export function readStandIn(vocabulary: Vocabulary): (text: string, options: ReadOptions) => Instrument {
  return (text, { path, sampleFacts }) => {
    const builder = new InstrumentBuilder('xml', text.length);
    builder.enterSource(path, text);
    const groups = vocabulary.levels.filter(({ is }) => is === 'group').length;
    const visit = (element: ElementText, outer: number, inherited: Map<string, string>) => {
      const level = vocabulary.levels.findIndex((one, at) => at > outer && one.element === element.name);
      const own = new Map(inherited);
      const places = placesOf(vocabulary)[level];
      const scope = builder.scope();
      if (places) {
        const { is } = places.level;
        const groupLevel = vocabulary.levels.slice(0, level + 1).filter((one) => one.is === 'group').length;
        const kind =
          is === 'region'
            ? 'region'
            : is === 'instrument'
              ? 'global'
              : groupLevel === groups
                ? 'group'
                : 'master';
        const header = builder.openHeader(headerKindOf(kind), element.start, element.nameEnd);
        builder.closeHeader(header, element.end);
        const late: (() => void)[] = [];
        for (const place of places.all) {
          const found = valueAt(text, element, place.path);
          if (!found) continue;
          const name = canonicalNameOf(place.parameter.parameter);
          const read = () => {
            let raw = decodeXmlAttribute(text.slice(found.start, found.end));
            const facts =
              own.get('sample') === undefined ? undefined : sampleFacts?.(own.get('sample') as string);
            const around = {
              parameter: name,
              sampleRate: facts?.sampleRate,
              frames: facts?.frames,
              frameOf: (other: string) => plainNumber(own.get(other) ?? '0') || 0,
            };
            const half = otherHalf(places, place);
            if (half) {
              const [a, b] = place.parameter.part === 1 ? [place, half] : [half, place];
              const range = splitRange(raw, a.parameter, b.parameter, (parameter) => ({
                ...around,
                parameter,
              }));
              raw = (place.parameter.part === 1 ? range?.first : range?.second) ?? '';
            }
            const value = readValue(place.parameter.form, raw, around);
            if (!value) return;
            own.set(name, value.text);
            const id = builder.addParameter(
              builder.names.idOf(name),
              found.attribute?.start ?? found.element.start + 1,
              found.start,
              found.end,
              value.number,
            );
            builder.setValue(id, value.text);
          };
          if (
            place.parameter.form.kind === 'position' &&
            (place.parameter.form.from || place.parameter.form.unit !== 'frames')
          )
            late.push(read);
          else read();
        }
        for (const read of late) read();
      }
      for (const child of element.children) visit(child, level < 0 ? outer : level, own);
      if (places && places.level.is !== 'instrument') builder.restore(scope);
    };
    for (const child of elementTree(text).children) visit(child, -1, new Map());
    return builder.finish();
  };
}
