import { plainNumber } from '../../model/instrumentBuilder';
import { frequencyOfKey } from '../../model/keys';
import { decimalText } from '../../model/text/decimalText';
import type { Accounts } from './writeAccounts';
import type { SourceValue } from './writeOwnValues';
import type { LevelPlaces } from './writePlaces';

/** A root key and the tuning of its sample as the one frequency that stands for both. */
export interface RootFrequency {
  text: string;
  /** The number of the text in its element. */
  slot: number;
}

/**
 * The frequency that a sample was recorded at, where a place takes root key and tuning in one text: a sample that is tuned up was
 * recorded as much lower. `undefined` where there is no such place or value, or the frequency is that of no key.
 */
export function rootFrequency(
  { byName }: LevelPlaces,
  values: ReadonlyMap<string, SourceValue>,
  inForce: (name: string) => string | undefined,
  accounts: Accounts,
): RootFrequency | undefined {
  const place = byName
    .get('pitch_keycenter')
    ?.find(({ parameter: { form } }) => form.kind === 'key' && form.written === 'frequency');
  const tuning = byName.get('tune')?.find(({ slot }) => slot === place?.slot)?.parameter.form;
  if (!place || tuning?.kind !== 'tuning' || tuning.unit !== 'frequency' || tuning.measured) return undefined;
  const [root, tune] = [values.get('pitch_keycenter'), values.get('tune')];
  if (!root && !tune) return undefined;
  const key = plainNumber(root?.value ?? inForce('pitch_keycenter') ?? '60');
  const cents = plainNumber(tune?.value ?? inForce('tune') ?? '0');
  const pitch = key - cents / 100;
  const nearest = Math.round(pitch);
  if (!(key >= 0 && nearest >= 0 && nearest <= 127)) return undefined;
  // Thousandths of a Hz tell the lowest keys apart.
  const number = decimalText(Math.round(frequencyOfKey(pitch) * 1000) / 1000);
  const left = Math.round((nearest - pitch) * 100);
  const isExact = nearest === key && left === cents;
  for (const one of [root, tune]) {
    if (!one) continue;
    if (isExact) accounts.keep(one.parameter, place.slot);
    else
      accounts.note(
        one.parameter,
        'approximated',
        `Root key ${key} and tune ${decimalText(cents)} are written as ${number} Hz, which is key ${nearest} and ${left} cents.`,
        'frequency',
        place.slot,
      );
  }
  return { text: number + (tuning.unitText ?? ''), slot: place.slot };
}
