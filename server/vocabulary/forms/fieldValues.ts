import type { FormField } from './formFields';

/** Whether a value is one that a field of a form can have. */
export function isFieldValue(value: unknown, field: FormField): boolean {
  switch (field.kind) {
    case 'choice':
      return field.of.some((one) => one === value);
    case 'text':
      return typeof value === 'string';
    case 'switch':
      return typeof value === 'boolean';
    case 'number':
      return typeof value === 'number' && Number.isFinite(value);
    case 'factor':
      return typeof value === 'number' && Number.isFinite(value) && value !== 0;
    case 'positive':
      return typeof value === 'number' && Number.isFinite(value) && value > 0;
    case 'whole':
      return Number.isSafeInteger(value);
    case 'words':
      return (
        typeof value === 'object' &&
        value !== null &&
        !Array.isArray(value) &&
        Object.keys(value).length > 0 &&
        Object.values(value).every((one) => typeof one === 'string')
      );
  }
}

/** What a field of a form can be, for a message. */
export function wantedOf(field: FormField): string {
  switch (field.kind) {
    case 'choice':
      return `${field.of.slice(0, -1).map(shown).join(', ')} or ${shown(field.of.at(-1) ?? '')}`;
    case 'text':
      return 'a text';
    case 'switch':
      return 'true or false';
    case 'number':
      return 'a number';
    case 'factor':
      return 'a number other than 0';
    case 'positive':
      return 'a number above 0';
    case 'whole':
      return 'a whole number';
    case 'words':
      return 'an object of words, each with the value that it stands for: { "off": "no_loop" }';
  }
}

function shown(value: string | number): string {
  return JSON.stringify(value);
}

/** A text as a message quotes it, not too long. */
export function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
