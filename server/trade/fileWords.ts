import { languages } from './languages/languages';

/** The words of all languages for a file, one and several. */
export const fileWords: readonly string[] = languages.flatMap(({ files }) => files);
