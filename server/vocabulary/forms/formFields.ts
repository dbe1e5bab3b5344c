import type { ValueForm } from '../vocabulary';

/** What a field of a form can be. */
export type FieldKind =
  | { kind: 'choice'; of: readonly (string | number)[] }
  | { kind: 'text' }
  | { kind: 'number' }
  /** A number other than 0. */
  | { kind: 'factor' }
  /** A number above 0. */
  | { kind: 'positive' }
  | { kind: 'whole' }
  | { kind: 'switch' }
  /** Texts by name. */
  | { kind: 'words' };

export type FormField = FieldKind & { required?: true };

const unitText: FormField = { kind: 'text' };
const choice = (...of: (string | number)[]): FieldKind => ({ kind: 'choice', of });
const required = (kind: FieldKind): FormField => ({ ...kind, required: true });

/** The fields of each form beside its `kind`, in the order in which they are written. */
export const formFields: Readonly<Record<ValueForm['kind'], Readonly<Record<string, FormField>>>> = {
  key: {
    written: required(choice('number', 'name', 'hexadecimal', 'frequency')),
    middleC: choice('C3', 'C4', 'C5'),
    naming: choice('german', 'syllables', 'lines', 'german lines'),
    names: { kind: 'text' },
    offset: { kind: 'whole' },
  },
  velocity: {
    most: required({ kind: 'positive' }),
    touching: { kind: 'switch' },
    fromOne: { kind: 'switch' },
    step: { kind: 'positive' },
    unitText,
  },
  level: {
    unit: required(choice('dB', 'centibels', 'factor', 'percent', 'sevenBits', 'eightBits')),
    attenuation: { kind: 'switch' },
    most: { kind: 'number' },
    unitText,
  },
  pan: {
    left: required({ kind: 'number' }),
    centre: required({ kind: 'number' }),
    right: required({ kind: 'number' }),
    sides: { kind: 'words' },
    sidesStand: choice('before', 'behind'),
    unitText,
  },
  tuning: {
    unit: required(choice('cents', 'semitones', 'ratio', 'frequency')),
    measured: { kind: 'switch' },
    unitText,
  },
  count: {
    from: required(choice('lokey', 'lovel', 'pitch_keycenter')),
    signed: { kind: 'switch' },
    unitText,
  },
  position: {
    unit: required(choice('frames', 'seconds', 'milliseconds', 'fraction', 'percent')),
    first: choice(0, 1),
    last: choice('included', 'excluded'),
    from: choice('offset', 'loop_start'),
    thousands: choice(',', '.', ' ', "'"),
    none: { kind: 'number' },
    rate: { kind: 'positive' },
    atRate: { kind: 'switch' },
    unitText,
  },
  time: { unit: required(choice('seconds', 'milliseconds')), unitText },
  number: { times: { kind: 'factor' }, plus: { kind: 'number' }, none: { kind: 'number' }, unitText },
  words: { words: required({ kind: 'words' }), over: { kind: 'switch' } },
  path: {
    folder: { kind: 'text' },
    under: { kind: 'text' },
    ending: { kind: 'text' },
    separator: choice('/', '\\'),
    list: { kind: 'words' },
  },
  text: {},
};
