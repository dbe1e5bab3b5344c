import type { Instrument } from '../../model/instrument';
import { plainNumber } from '../../model/instrumentBuilder';
import type { ConversionNote } from '../../model/notes';
import { counted } from '../../model/wording/counted';

/** What regions have from the template, by value. */
export class AddedValues {
  readonly #added = new Map<string, { name: string; value: string; header: number; count: number }>();

  add(name: string, value: string, header: number): void {
    const key = `${name}=${value}`;
    const found = this.#added.get(key);
    if (found) found.count++;
    else this.#added.set(key, { name, value, header, count: 1 });
  }

  notes(source: Instrument): ConversionNote[] {
    return [...this.#added.values()].map(({ name, value, header, count }) => ({
      kind: 'assumed',
      ...source.headerSpan(header),
      message: `${name}=${value} comes from the template, for ${counted(count, 'region')}.${besideSource(name, value)}`,
    }));
  }
}

/** How a level of the template changes those of the source, as a sentence with a space before it; empty for other values. */
function besideSource(name: string, value: string): string {
  const decibels = Math.round(plainNumber(value) * 100) / 100;
  if (!/^(?:(?:group|master|global)_)?volume$/.test(name) || !(Math.abs(decibels) > 0)) return '';
  return ` They sound ${Math.abs(decibels)} dB ${decibels < 0 ? 'quieter' : 'louder'} than in the source.`;
}
